/**
 * What is told for some chords: the charts that hold them, and where those are few, the ones that
 * come nearest behind them.
 */

import { nearest } from "./chord-nearness.js";
import { search } from "./chord-search.js";

const FEW = 12;

/**
 * @param {import("./chord-index.js").Index} index
 * @param {import("./chord-reading.js").Question} asked
 * @param {import("./chord-search.js").How} how
 */
export function answer(index, { chords, numerals }, how) {
  const asked = { ...how, numerals };
  const found = search(index, chords, asked);
  if (found.length >= FEW) return { found, near: [] };
  const known = new Set(found.map(({ row }) => row));
  return { found, near: nearest(index, chords, asked, known) };
}
