/** What is said of a beat that was asked for: by a bar of drums, by tempo and by feel. */

import { readPattern } from "./beat-reading.js";
import { decode, search } from "./beat-search.js";
import { load, once } from "./index-files.js";
import { nothing } from "./results.js";

/**
 * @typedef {import("./beat-search.js").Match} Match
 */

const SIXTEENTH = 6;
const index = once(async () => decode(await load("beats.json")));

/** @param {Record<string, string>} fields @returns {Promise<import("./answering.js").Found>} */
export async function answer({ meter, steps, beat = "", from, to, feel = "" }) {
  const { hits, unread } = readPattern(beat, meter, steps);
  if (unread) return nothing(`“${unread}” is no drum, or not a bar of ${meter}.`);
  const question = { meter, hits, slowest: Number(from ?? 0), fastest: to ? Number(to) : Infinity, feel };
  const found = search(await index(), question);
  const passages = async (/** @type {number} */ first, /** @type {number} */ end) =>
    found.slice(first, end).map(passage);
  return { said: say(found, !!beat), understood: true, count: found.length, passages };
}

/** @param {Match[]} found @param {boolean} hasBeat */
function say(found, hasBeat) {
  if (!found.length) return "No chart has this beat, or one that is near it.";
  if (found[0].distance) return "No chart has just this beat; these come nearest.";
  const one = hasBeat ? "One chart has it." : "One chart fits.";
  return found.length === 1 ? one : found.length + (hasBeat ? " charts have it." : " charts fit.");
}

/** @param {Match} match */
function passage({ chart, bar, more, fewer }) {
  const told = [];
  if (chart.tempo) told.push(chart.tempo + " beats a minute");
  if (chart.feel !== "straight") told.push(chart.feel);
  if (more.length) told.push("more: " + more.map(sayHit).join(", "));
  if (fewer.length) told.push("missing: " + fewer.map(sayHit).join(", "));
  const note = `<p class="found-song">${told.join("; ")}</p>`;
  return { writeUp: chart.writeUp, chart: chart.chart, bars: bar?.bars ?? [], note };
}

/** "SD on sixteenth 5". @param {[string, number]} hit */
const sayHit = ([drum, tick]) => {
  const step = tick / SIXTEENTH + 1;
  return drum + " on sixteenth " + (Number.isInteger(step) ? step : step.toFixed(1));
};
