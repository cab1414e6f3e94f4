/** Beats looked up by a bar of drums on a grid, by tempo and by feel. */

import { decode, search } from "./beat-search.js";
import { fieldsOf, makeFinder } from "./finder.js";
import { load } from "./results.js";
import { makeGrid, readPattern } from "./beat-grid.js";

/**
 * @typedef {import("./beat-search.js").Chart} Chart
 * @typedef {import("./beat-search.js").Match} Match
 */

const FIELDS = ["meter", "steps", "beat", "from", "to", "feel"];
const SIXTEENTH = 6;

/** @type {Promise<Chart[]> | undefined} */
let index;

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#beat_form"));
  if (!form) return () => {};
  const listening = new AbortController();
  const grid = makeGrid(form, listening.signal);
  // The meter is always chosen: it alone is no question.
  const leave = makeFinder(form, FIELDS, () => answer(fieldsOf(form, FIELDS)), grid.show, isAsked);
  return () => {
    listening.abort();
    leave();
    grid.leave();
  };
}

/** @param {Record<string, string>} fields */
const isAsked = ({ beat, from, to, feel }) => !!(beat || from || to || feel);

/** @param {Record<string, string>} fields */
async function answer({ meter, steps, beat = "", from, to, feel = "" }) {
  const { hits, unread } = readPattern(beat, meter, steps);
  if (unread) return { said: `“${unread}” is no drum, or not a bar of ${meter}.`, passages: [] };
  index ??= load("beats.json").then(decode);
  index.catch(() => (index = undefined));
  const question = { meter, hits, slowest: Number(from ?? 0), fastest: to ? Number(to) : Infinity, feel };
  const found = search(await index, question);
  return { said: say(found, !!beat), passages: found.map(passage) };
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
