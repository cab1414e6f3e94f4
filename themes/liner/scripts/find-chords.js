/** Progressions looked up by chords or numerals; the last questions are kept on the device. */

import { moved, read } from "./chord-reading.js";
import { nearest } from "./chord-nearness.js";
import { decode, search } from "./chord-search.js";
import { fieldsOf, makeFinder } from "./finder.js";
import { escape, load } from "./results.js";

/**
 * @typedef {import("./chord-search.js").Match} Match
 * @typedef {import("./chord-search.js").Row} Row
 * @typedef {import("./chord-search.js").Symbol} Symbol
 * @typedef {import("./chord-nearness.js").Near} Near
 * @typedef {import("./chord-reading.js").Asked} Asked
 */

const FIELDS = ["chords", "loop", "exact", "key"];
const KEPT = "liner.chords";
const MOST_KEPT = 8;
const WAYS = [
  "as it is",
  "its loop, from another chord",
  "in it",
  "up to extensions",
  "its loop from another chord, up to extensions",
  "in it, up to extensions",
];
const SIZES = ["", "semitone", "whole tone", "minor third", "major third", "fourth", "tritone"];

/** @type {Promise<ReturnType<typeof decode>> | undefined} */
let index;

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#chords_form"));
  if (!form) return () => {};
  offerRecent(form);
  return makeFinder(form, FIELDS, async () => {
    const fields = fieldsOf(form, FIELDS);
    const readings = await load("readings.json");
    const asked = read(fields.chords, readings);
    if (asked.unread) return { said: `“${asked.unread}” is no chord or numeral that is known here.`, passages: [] };
    if (asked.chords.length < 2) return { said: "Ask for two chords or more.", passages: [] };
    index ??= load("chords.json").then(decode);
    index.catch(() => (index = undefined));
    const { symbols, rows } = await index;
    const how = { numerals: asked.numerals, sameKey: !!fields.key, exact: !!fields.exact, loop: !!fields.loop };
    remember(form, fields.chords);
    const found = search(rows, asked.chords, how);
    if (found.length) {
      const said = found.length === 1 ? "One chart has them." : found.length + " charts have them.";
      return { said, passages: found.map((match) => passage(match, symbols, how)) };
    }
    const near = nearest(rows, symbols, asked.chords, how);
    if (!near.length) return { said: "No chart has them, or anything near.", passages: [] };
    const said = "No chart has just these; these come nearest.";
    return { said, passages: near.map((one) => nearPassage(one, symbols, asked.chords, how)) };
  });
}

/** @param {Match} match @param {Symbol[]} symbols @param {{ numerals: boolean }} how */
function passage({ row, way, shift, steps }, symbols, { numerals }) {
  const chords = steps.map((step) => `<li>${escape(symbols[row.steps[step]][0])}</li>`);
  const told = [WAYS[way], ...(numerals ? [] : sayShift(shift))].join("; ");
  const note = `<ol class="found-chords">${chords.join("")}</ol><p class="found-song">${told}</p>`;
  return { writeUp: row.writeUp, chart: row.chart, bars: barsOf(row, steps), note };
}

/**
 * @param {Near} near
 * @param {Symbol[]} symbols
 * @param {Asked[]} asked
 * @param {{ numerals: boolean }} how
 */
function nearPassage({ row, shift, pairs }, symbols, asked, { numerals }) {
  const flats = row.steps.some((step) => symbols[step][0].includes("♭"));
  const chords = pairs.map(([a, step]) => {
    const there = step < 0 ? "" : escape(symbols[row.steps[step]][0]);
    const wanted = a < 0 ? "" : escape(numerals ? asked[a].written : moved(asked[a].written, shift, flats));
    if (step < 0) return `<li><del>${wanted}</del></li>`;
    if (a < 0) return `<li><ins>${there}</ins> <small>more</small></li>`;
    const [, root, notes] = symbols[row.steps[step]];
    const isSame = (asked[a].root + shift) % 12 === root && asked[a].notes === notes;
    return isSame ? `<li>${there}</li>` : `<li><ins>${there}</ins> <small>for ${wanted}</small></li>`;
  });
  const steps = pairs.map(([, step]) => step).filter((step) => step >= 0);
  const told = numerals ? "" : sayShift(shift).join("");
  const note = `<ol class="found-chords">${chords.join("")}</ol><p class="found-song">${told}</p>`;
  return { writeUp: row.writeUp, chart: row.chart, bars: barsOf(row, steps), note };
}

/** @param {Row} row @param {number[]} steps */
function barsOf({ bars }, steps) {
  const all = steps.flatMap((step) => {
    const [first, last] = bars.slice(2 * step, 2 * step + 2);
    return last < first ? [first, last] : Array.from({ length: last - first + 1 }, (_, n) => first + n);
  });
  return [...new Set(all)].sort((one, other) => one - other);
}

/** @param {number} shift */
function sayShift(shift) {
  if (!shift) return ["in the key asked for"];
  const size = SIZES[Math.min(shift, 12 - shift)];
  return [`a ${size} ${shift <= 6 ? "higher" : "lower"}`];
}

/** @param {HTMLFormElement} form @param {string} chords */
function remember(form, chords) {
  const others = recent().filter((one) => one !== chords);
  try {
    localStorage.setItem(KEPT, JSON.stringify([chords, ...others].slice(0, MOST_KEPT)));
  } catch {
    return; // a device that keeps nothing
  }
  offerRecent(form);
}

/** @returns {string[]} */
function recent() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "[]");
    return Array.isArray(kept) ? kept.filter((one) => typeof one === "string") : [];
  } catch {
    return [];
  }
}

/** @param {HTMLFormElement} form */
function offerRecent(form) {
  const list = /** @type {Element} */ (form.querySelector("#chords_recent"));
  list.replaceChildren(...recent().map((chords) => new Option("", chords)));
}
