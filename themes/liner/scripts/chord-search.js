/**
 * Progressions that hold some chords. For every chart the best way in which it holds them is told;
 * the ways, best first:
 *
 *   0 the loop or the whole of it, 1 its loop from another chord, 2 somewhere in it,
 *   each with the very notes of every chord; 3, 4 and 5 the same up to extensions and basses.
 *
 * Chords count in any key, or in the key that was asked for. Of equal ways the key that is asked for
 * comes first, then the smaller transposition, the higher of two, and the earlier place; of
 * charts in equal ways the order of the archive decides.
 */

import { FAMILIES } from "./chord-index.js";
import { mod } from "./columns.js";

/**
 * @typedef {import("./chord-reading.js").Asked} Asked
 * @typedef {import("./chord-index.js").Index} Index
 * @typedef {import("./chord-index.js").Line} Line
 * @typedef {object} How
 * @property {boolean} [numerals] roots count from the tonic
 * @property {boolean} [sameKey]
 * @property {boolean} [exact] extensions and basses count
 * @property {boolean} [loop] only what is the whole or a loop
 * @typedef {object} Match
 * @property {number} row the number of the progression
 * @property {number} way
 * @property {number} shift semitones up from what was asked, 0 to 11
 * @property {number[]} steps those that match, in order, counted through the index
 * @typedef {object} Wanted
 * @property {number[]} roots
 * @property {number[]} signs
 */

/**
 * Charts that hold the chords, the best first.
 *
 * @param {Index} index
 * @param {Asked[]} chords two or more
 * @param {How} [how]
 * @returns {Match[]}
 */
export function search(index, chords, how = {}) {
  const full = {
    roots: chords.map(({ root }) => root),
    signs: chords.map(({ notes }) => index.notes.get(notes) ?? -1),
  };
  const core = merge(chords);
  const asksCore = !how.exact && core.roots.length > 1;
  /** @type {Match[]} */
  const found = [];
  for (let row = 0; row < index.count; row++) {
    const key = keyOf(index, row, how);
    if (key !== undefined && key < 0) continue;
    const best =
      bestWay(row, index.full, full, key, how.loop, 0) ??
      (asksCore ? bestWay(row, index.core, core, key, how.loop, 3) : undefined);
    if (best) found.push(best);
  }
  return found.sort((one, other) => one.way - other.way || far(one.shift) - far(other.shift));
}

/**
 * The only shift that counts, -1 where none does, undefined where all do.
 *
 * @param {Index} index
 * @param {number} row
 * @param {How} how
 */
export function keyOf({ tonics }, row, { numerals, sameKey }) {
  return numerals ? tonics[row] : sameKey ? 0 : undefined;
}

/** The smaller transposition first, the higher of two. @param {number} shift */
export const far = (shift) => (shift <= 6 ? 2 * shift : 2 * (12 - shift) + 1);

/** @param {Asked[]} chords @returns {Wanted} */
function merge(chords) {
  /** @type {Wanted} */
  const core = { roots: [], signs: [] };
  for (const { root, family } of chords) {
    const sign = FAMILIES.indexOf(family);
    if (core.roots.at(-1) === root && core.signs.at(-1) === sign) continue;
    core.roots.push(root);
    core.signs.push(sign);
  }
  return core;
}

/**
 * @param {number} row
 * @param {Line} line
 * @param {Wanted} asked
 * @param {number | undefined} key
 * @param {boolean | undefined} loop
 * @param {number} way the first of three
 * @returns {Match | undefined}
 */
function bestWay(row, line, asked, key, loop, way) {
  const count = asked.roots.length;
  const first = line.firsts[row];
  const all = line.firsts[row + 1] - first;
  const cell = line.cells[row];
  const opening = first + line.starts[row];
  if (count === all || count === cell) {
    const from = count === all ? first : opening;
    const shift = holds(line, asked, from, 0, count, key);
    if (shift >= 0) return { row, way, shift, steps: steps(line, from, 0, count, count) };
  }
  /** @type {Match | undefined} */
  let best;
  /** @param {number} own @param {number} from @param {number} turn @param {number} round */
  const consider = (own, from, turn, round) => {
    const shift = holds(line, asked, from, turn, round, key);
    if (shift < 0 || (best && far(shift) >= far(best.shift))) return;
    best = { row, way: own, shift, steps: steps(line, from, turn, round, count) };
  };
  if (count === cell) for (let turn = 1; turn < cell; turn++) consider(way + 1, opening, turn, cell);
  if (best || loop) return best;
  for (let turn = 0; turn + count <= all; turn++) consider(way + 2, first, turn, all);
  // Round and round: a loop that is written once has a seam as well.
  if (count <= 4 * cell) for (let turn = 0; turn < cell; turn++) consider(way + 2, opening, turn, cell);
  return best;
}

/**
 * How many semitones up a line holds what is asked, -1 where it does not. What comes after `round`
 * places is the first of them again.
 *
 * @param {Line} line
 * @param {Wanted} asked
 * @param {number} from the first of the places
 * @param {number} turn how many places after it to start
 * @param {number} round
 * @param {number | undefined} key
 */
function holds({ roots, signs }, asked, from, turn, round, key) {
  if (signs[from + turn] !== asked.signs[0]) return -1;
  const shift = mod(roots[from + turn] - asked.roots[0]);
  if (key !== undefined && shift !== key) return -1;
  for (let n = 1, place = turn; n < asked.roots.length; n++) {
    place = place + 1 === round ? 0 : place + 1;
    if (signs[from + place] !== asked.signs[n]) return -1;
    if ((roots[from + place] - asked.roots[n] - shift) % 12) return -1;
  }
  return shift;
}

/**
 * The steps of so many places, which go round as those of `holds` do.
 *
 * @param {Line} line
 * @param {number} from
 * @param {number} turn
 * @param {number} round
 * @param {number} count
 */
function steps({ at }, from, turn, round, count) {
  return Array.from({ length: count }, (_, n) => from + ((turn + n) % round)).flatMap((place) =>
    Array.from({ length: (at[place + 1] ?? at[place] + 1) - at[place] }, (_, n) => at[place] + n),
  );
}
