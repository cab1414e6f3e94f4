/** What is said of a progression that was asked for, by chords or numerals. */

import { answer as find } from "./chord-answer.js";
import { barsOf, decode, symbolOf } from "./chord-index.js";
import { moved, read, readingsWith } from "./chord-reading.js";
import { load, once } from "./index-files.js";
import { escape } from "./names.js";
import { nothing } from "./results.js";

/**
 * @typedef {import("./chord-index.js").Index} Index
 * @typedef {import("./chord-search.js").Match} Match
 * @typedef {import("./chord-nearness.js").Near} Near
 * @typedef {import("./chord-reading.js").Asked} Asked
 */

const WAYS = [
  "as it is",
  "its loop, from another chord",
  "in it",
  "up to extensions",
  "its loop from another chord, up to extensions",
  "in it, up to extensions",
];
const SIZES = ["", "semitone", "whole tone", "minor third", "major third", "fourth", "tritone"];

const index = once(async () => decode(await load("chords.json")));

/** @param {Record<string, string>} fields @returns {Promise<import("./answering.js").Found>} */
export async function answer(fields) {
  const [ready, table] = await Promise.all([index(), load("readings.json")]);
  const asked = read(fields.chords, readingsWith(table, ready.chords));
  if (asked.unread) return nothing(sayUnread(asked));
  if (asked.chords.length < 2) return nothing("Ask for two chords or more.");
  const how = { sameKey: !!fields.key, exact: !!fields.exact, loop: !!fields.loop };
  const { found, near } = find(ready, asked, how);
  const tell = [
    ...found.map((match) => () => passage(match, ready, asked.numerals)),
    ...near.map((one) => () => nearPassage(one, ready, asked)),
  ];
  const passages = async (/** @type {number} */ from, /** @type {number} */ to) =>
    tell.slice(from, to).map((one) => one());
  return { said: sayCounts(found.length, near.length), understood: true, count: tell.length, passages };
}

/** @param {{ unread: string, numerals: boolean }} asked */
function sayUnread({ unread, numerals }) {
  if (numerals) {
    return `“${unread}” cannot be read as a numeral. Write degrees of the major scale, I to vii with b or #, capitals for a major third, and 7, maj7, ° or sus4 behind them; V7/ii leads to ii.`;
  }
  return `“${unread}” cannot be read as a chord. Write a root from A to G with b or #, then m, 7, maj7, m7b5, dim, sus4, add9 and so on, and a bass behind a slash.`;
}

/** @param {number} found @param {number} near */
function sayCounts(found, near) {
  if (!found) return near ? "No chart has just these; these come nearest." : "No chart has them, or anything near.";
  const charts = found === 1 ? "One chart has them" : `${found} charts have them`;
  return near ? `${charts}; behind, what comes nearest.` : `${charts}.`;
}

/** @param {Match} match @param {Index} index @param {boolean} numerals */
function passage({ row, way, shift, steps }, index, numerals) {
  const chords = steps.map((step) => `<li>${escape(symbolOf(index, step))}</li>`);
  const told = [WAYS[way], ...(numerals ? [] : [sayShift(shift)])].join("; ");
  return placed(index, row, steps, chords, told);
}

/** @param {Near} near @param {Index} index @param {{ chords: Asked[], numerals: boolean }} asked */
function nearPassage({ row, cost, shift, pairs }, index, { chords, numerals }) {
  const flats = pairs.some(([, step]) => step >= 0 && symbolOf(index, step).includes("♭"));
  const items = pairs.map(([a, step]) => {
    const there = step < 0 ? "" : escape(symbolOf(index, step));
    const wanted = a < 0 ? "" : escape(numerals ? chords[a].written : moved(chords[a].written, shift, flats));
    if (step < 0) return `<li><del>${wanted}</del> <small>missing</small></li>`;
    if (a < 0) return `<li><ins>${there}</ins> <small>more</small></li>`;
    const isSame =
      (chords[a].root + shift) % 12 === index.full.roots[step] &&
      index.notes.get(chords[a].notes) === index.full.signs[step];
    return isSame ? `<li>${there}</li>` : `<li><ins>${there}</ins> <small>for ${wanted}</small></li>`;
  });
  const steps = pairs.map(([, step]) => step).filter((step) => step >= 0);
  const told = [cost ? "near" : "in it, but not as a loop", ...(numerals ? [] : [sayShift(shift)])].join("; ");
  return placed(index, row, steps, items, told);
}

/**
 * @param {Index} index
 * @param {number} row
 * @param {number[]} steps
 * @param {string[]} chords
 * @param {string} told
 */
function placed(index, row, steps, chords, told) {
  const note = `<ol class="found-chords">${chords.join("")}</ol><p class="found-song">${told}</p>`;
  return { writeUp: index.writeUps[row], chart: index.charts[row], bars: barsOf(index, steps), note };
}

/** @param {number} shift */
function sayShift(shift) {
  if (!shift) return "in the key asked for";
  const size = SIZES[Math.min(shift, 12 - shift)];
  return `a ${size} ${shift <= 6 ? "higher" : "lower"}`;
}
