/**
 * The progressions that come nearest to some chords, for when few hold them: the least cost of
 * turning what is asked into chords that follow each other there, in any key. A chord with other
 * extensions costs 1, another chord on the same root 2, any other chord 4, and so does one too many
 * or too few. Looked at are charts that hold two of the chords, and at least half of them, up to
 * extensions.
 */

import { FAMILIES } from "./chord-index.js";
import { far, keyOf } from "./chord-search.js";
import { mod } from "./columns.js";

/**
 * @typedef {import("./chord-reading.js").Asked} Asked
 * @typedef {import("./chord-index.js").Index} Index
 * @typedef {import("./chord-search.js").How} How
 * @typedef {object} Near
 * @property {number} row
 * @property {number} cost
 * @property {number} shift
 * @property {[asked: number, step: number][]} pairs places in what is asked beside steps of the row,
 *   -1 where one of them has none
 * @typedef {object} Wanted
 * @property {number[]} roots
 * @property {number[]} families
 * @property {number[]} notes
 * @typedef {object} Candidate
 * @property {number} row
 * @property {number} cost
 * @property {number} shift
 */

const [EXTENSION, QUALITY, OTHER, GAP] = [1, 2, 4, 4];
const MOST = 24;
const SHIFTS = Array.from({ length: 12 }, (_, n) => n).sort((one, other) => far(one) - far(other));

/**
 * @param {Index} index
 * @param {Asked[]} chords
 * @param {How} [how]
 * @param {Set<number>} [without] rows that are left out
 * @returns {Near[]} the nearest first; of equals those of the smaller transposition
 */
export function nearest(index, chords, how = {}, without = new Set()) {
  const asked = {
    roots: chords.map(({ root }) => root),
    families: chords.map(({ family }) => FAMILIES.indexOf(family)),
    notes: chords.map(({ notes }) => index.notes.get(notes) ?? -1),
  };
  // No more than half of all chords may be quite other ones.
  const most = (chords.length * OTHER) / 2;
  const bounds = leastCosts(index, asked, how, without, most);
  /** @type {Candidate[]} */
  const best = [];
  for (let bound = 0; bound <= worst(best, most); bound++) {
    for (let place = bounds.indexOf(bound); place >= 0; place = bounds.indexOf(bound, place + 1)) {
      const [row, shift] = [Math.floor(place / 12), SHIFTS[place % 12]];
      if (best.length === MOST && !isBefore({ row, cost: bound, shift }, best[MOST - 1])) continue;
      const cost = leastCost(index, asked, textOf(index, row), shift, worst(best, most));
      if (cost <= most) keep(best, { row, cost, shift });
    }
  }
  return best.map((one) => ({ ...one, pairs: align(index, asked, textOf(index, one.row), one.shift) }));
}

/** @param {Candidate[]} best @param {number} most */
const worst = (best, most) => (best.length === MOST ? best[MOST - 1].cost : most);

/** @param {Candidate} one @param {Candidate} other */
function isBefore(one, other) {
  return (one.cost - other.cost || far(one.shift) - far(other.shift) || one.row - other.row) < 0;
}

/** Puts a candidate among the best, one for each row. @param {Candidate[]} best @param {Candidate} one */
function keep(best, one) {
  const known = best.findIndex(({ row }) => row === one.row);
  if (known >= 0 && !isBefore(one, best[known])) return;
  if (known >= 0) best.splice(known, 1);
  const place = best.findIndex((other) => isBefore(one, other));
  best.splice(place < 0 ? best.length : place, 0, one);
  best.length = Math.min(best.length, MOST);
}

/**
 * A cost that no row can be below, for every row in each of `SHIFTS`: what the chords cost that it
 * does not hold anywhere. 255 is for those that are not looked at.
 *
 * @param {Index} index
 * @param {Wanted} asked
 * @param {How} how
 * @param {Set<number>} without
 * @param {number} most
 */
function leastCosts(index, asked, how, without, most) {
  const bounds = new Uint8Array(12 * index.count).fill(255);
  const { firsts, roots, signs } = index.full;
  const wanted = asked.roots.length;
  // Which roots each family has, and which roots there are at all, a bit for each, twice over; and
  // the last row, from 1, that has just these notes.
  const held = new Int32Array(FAMILIES.length + 1);
  const holder = new Uint32Array(12 * index.notes.size);
  for (let row = 0; row < index.count; row++) {
    const key = keyOf(index, row, how);
    if ((key !== undefined && key < 0) || without.has(row)) continue;
    held.fill(0);
    for (let step = firsts[row]; step < firsts[row + 1]; step++) {
      const bit = 0x1001 << roots[step];
      held[index.families[step]] |= bit;
      held[FAMILIES.length] |= bit;
      holder[12 * signs[step] + roots[step]] = row + 1;
    }
    for (let n = 0; n < 12; n++) {
      const shift = SHIFTS[n];
      if (key !== undefined && shift !== key) continue;
      let [known, cost] = [0, 0];
      for (let at = 0; at < wanted; at++) {
        const root = asked.roots[at] + shift;
        if (!((held[FAMILIES.length] >> root) & 1)) cost += OTHER;
        else if (!((held[asked.families[at]] >> root) & 1)) cost += QUALITY;
        else {
          known++;
          const isHeld = asked.notes[at] >= 0 && holder[12 * asked.notes[at] + (root % 12)] === row + 1;
          if (!isHeld) cost += EXTENSION;
        }
      }
      if (known > 1 && 2 * known >= wanted && cost <= most) bounds[12 * row + n] = cost;
    }
  }
  return bounds;
}

/**
 * The steps of a row, those of its loop once more behind them.
 *
 * @param {Index} index
 * @param {number} row
 */
function textOf({ full }, row) {
  const [first, end] = [full.firsts[row], full.firsts[row + 1]];
  const text = [];
  for (let step = first; step < end; step++) text.push(step);
  const from = first + full.starts[row];
  for (let step = from; step < from + full.cells[row]; step++) text.push(step);
  return text;
}

/**
 * The least cost of finding the chords somewhere in a text, any cost above `most` where it is more.
 *
 * @param {Index} index
 * @param {Wanted} asked
 * @param {number[]} text
 * @param {number} shift
 * @param {number} most
 */
function leastCost(index, asked, text, shift, most) {
  const row = new Int32Array(text.length + 1);
  for (let n = 0; n < asked.roots.length; n++) {
    let above = row[0];
    let least = (row[0] += GAP);
    for (let at = 0; at < text.length; at++) {
      const pair = above + substitution(index, asked, n, text[at], shift);
      above = row[at + 1];
      row[at + 1] = Math.min(pair, above + GAP, row[at] + GAP);
      least = Math.min(least, row[at + 1]);
    }
    if (least > most) return least;
  }
  return Math.min(...row);
}

/**
 * The cheapest way to find the chords somewhere in a text, in pairs; of equally cheap ones, the one
 * that ends first, and pairs before gaps.
 *
 * @param {Index} index
 * @param {Wanted} asked
 * @param {number[]} text
 * @param {number} shift
 * @returns {[number, number][]}
 */
function align(index, asked, text, shift) {
  const costs = [new Array(text.length + 1).fill(0)];
  for (const n of asked.roots.keys()) {
    const above = costs[n];
    const row = [above[0] + GAP];
    for (const [at, step] of text.entries()) {
      const pair = above[at] + substitution(index, asked, n, step, shift);
      row.push(Math.min(pair, above[at + 1] + GAP, row[at] + GAP));
    }
    costs.push(row);
  }
  const last = costs[asked.roots.length];
  /** @type {[number, number][]} */
  const pairs = [];
  for (let [n, at] = [asked.roots.length, last.indexOf(Math.min(...last))]; n > 0; ) {
    const here = costs[n][at];
    const paired = at > 0 ? costs[n - 1][at - 1] + substitution(index, asked, n - 1, text[at - 1], shift) : -1;
    if (here === paired) pairs.unshift([--n, text[--at]]);
    else if (here === costs[n - 1][at] + GAP) pairs.unshift([--n, -1]);
    else pairs.unshift([-1, text[--at]]);
  }
  return pairs;
}

/**
 * @param {Index} index
 * @param {Wanted} asked
 * @param {number} n
 * @param {number} step
 * @param {number} shift
 */
function substitution({ full, families }, asked, n, step, shift) {
  if ((asked.roots[n] + shift - full.roots[step]) % 12) return OTHER;
  if (asked.families[n] !== families[step]) return QUALITY;
  return asked.notes[n] === full.signs[step] ? 0 : EXTENSION;
}
