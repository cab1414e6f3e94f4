/**
 * The index of progressions made ready for searching: the columns of sitegen/finding/chords_index.py
 * as arrays of numbers, for thousands of progressions are gone through at every question.
 */

import { FIRST, MIDDLE, mod, signed } from "./columns.js";

/**
 * @typedef {object} Line Places that are compared: steps, or steps up to extensions.
 * @property {Uint8Array} roots pitch classes
 * @property {Uint16Array} signs numbers of `Index.notes`, or of `FAMILIES`
 * @property {Uint32Array} firsts the first place of each progression, and the end of the last one
 * @property {Uint32Array} at the step where each place starts
 * @property {Uint16Array} starts the place, in its progression, where its loop starts
 * @property {Uint16Array} cells the number of places of one pass of its loop, 0 without
 * @typedef {object} Index
 * @property {[suffix: string, bass: number | null, notes: string, family: string][]} chords
 * @property {Map<string, number>} notes
 * @property {number} count of progressions
 * @property {Uint32Array} writeUps
 * @property {Uint16Array} charts
 * @property {Int8Array} tonics pitch classes, -1 without
 * @property {Int8Array} fifths the root of each step on the line of fifths
 * @property {Uint16Array} kinds the place of each step among `chords`
 * @property {Uint8Array} families the family of each step
 * @property {Int32Array} bars first and last bar of each step
 * @property {Line} full steps with their very notes
 * @property {Line} core up to extensions and basses, equal neighbours as one
 */

const NO_TONIC = 64;
const UNKEYED = NO_TONIC / 2;

export const FAMILIES = ["major", "minor", "diminished", "augmented", "suspended", "power"];

/** @param {any} file @returns {Index} */
export function decode({ chords, write_ups, charts, tonics, lengths, starts, cells, roots, kinds, bars, lasts }) {
  const count = lengths.length;
  const firsts = new Uint32Array(count + 1);
  const places = numbers(kinds);
  /** @type {Map<string, number>} */
  const notes = new Map();
  for (const [, , own] of chords) if (!notes.has(own)) notes.set(own, notes.size);
  const signOf = Uint16Array.from(chords, (/** @type {any} */ chord) => notes.get(chord[2]) ?? 0);
  const familyOf = Uint8Array.from(chords, (/** @type {any} */ chord) => FAMILIES.indexOf(chord[3]));
  const made = {
    writeUps: new Uint32Array(count),
    charts: numbers(charts),
    tonics: new Int8Array(count),
    fifths: new Int8Array(kinds.length),
    families: new Uint8Array(kinds.length),
    bars: new Int32Array(2 * kinds.length),
  };
  const full = {
    roots: new Uint8Array(kinds.length),
    signs: new Uint16Array(kinds.length),
    firsts,
    at: new Uint32Array(kinds.length),
    starts: numbers(starts),
    cells: numbers(cells),
  };
  for (let row = 0, step = 0, writeUp = 0; row < count; row++) {
    made.writeUps[row] = writeUp += write_ups.charCodeAt(row) - FIRST;
    const told = tonics.charCodeAt(row) - MIDDLE;
    const home = told > UNKEYED ? told - NO_TONIC : told;
    made.tonics[row] = home === told ? mod(7 * home) : -1;
    const end = step + lengths.charCodeAt(row) - FIRST;
    for (let last = 0; step < end; step++) {
      full.at[step] = step;
      full.signs[step] = signOf[places[step]];
      made.families[step] = familyOf[places[step]];
      made.fifths[step] = roots.charCodeAt(step) - MIDDLE + home;
      full.roots[step] = mod(7 * made.fifths[step]);
      made.bars[2 * step] = last + signed(bars.charCodeAt(step) - FIRST);
      last = made.bars[2 * step + 1] = made.bars[2 * step] + signed(lasts.charCodeAt(step) - FIRST);
    }
    firsts[row + 1] = end;
  }
  return { chords, notes, count, kinds: places, ...made, full, core: merge(full, made.families) };
}

/** @param {string} text */
function numbers(text) {
  const found = new Uint16Array(text.length);
  for (let n = 0; n < text.length; n++) found[n] = text.charCodeAt(n) - FIRST;
  return found;
}

/**
 * The places up to extensions, equal neighbours as one.
 *
 * @param {Line} full
 * @param {Uint8Array} families
 * @returns {Line}
 */
function merge({ roots, firsts, starts, cells }, families) {
  const core = {
    roots: new Uint8Array(roots.length),
    signs: new Uint16Array(roots.length),
    firsts: new Uint32Array(firsts.length),
    at: new Uint32Array(roots.length + 1),
    starts: new Uint16Array(starts.length),
    cells: new Uint16Array(starts.length),
  };
  let place = 0;
  for (let row = 0; row < starts.length; row++) {
    const first = (core.firsts[row] = place);
    const from = firsts[row] + starts[row];
    let opening = first;
    for (let step = firsts[row]; step < firsts[row + 1]; step++) {
      const isSame = roots[step] === core.roots[place - 1] && families[step] === core.signs[place - 1];
      if (place === first || !isSame) {
        core.roots[place] = roots[step];
        core.signs[place] = families[step];
        core.at[place++] = step;
      }
      if (step === from) opening = place - 1;
      if (step === from + cells[row] - 1) core.cells[row] = place - opening;
    }
    core.starts[row] = opening - first;
    // A loop that ends with the chord that it starts with, up to extensions, has one place fewer.
    const last = opening + core.cells[row] - 1;
    const closes = core.roots[last] === core.roots[opening] && core.signs[last] === core.signs[opening];
    if (core.cells[row] > 1 && closes) core.cells[row] -= 1;
  }
  core.firsts[starts.length] = place;
  core.at[place] = roots.length;
  return core;
}

const LETTERS = "FCGDAEB";

/** A note name by its place on the line of fifths, C = 0. @param {number} fifths */
export function nameAt(fifths) {
  const alteration = Math.floor((fifths + 1) / 7);
  return LETTERS[fifths + 1 - 7 * alteration] + (alteration < 0 ? "♭" : "♯").repeat(Math.abs(alteration));
}

/** A step's symbol, as it stands in the chart. @param {Index} index @param {number} step */
export function symbolOf({ chords, fifths, kinds }, step) {
  const [suffix, bass] = chords[kinds[step]];
  return nameAt(fifths[step]) + suffix + (bass === null ? "" : `/${nameAt(fifths[step] + bass)}`);
}

/** The bars of some steps, rising. @param {Index} index @param {number[]} steps */
export function barsOf({ bars }, steps) {
  const all = steps.flatMap((step) => {
    const [first, last] = [bars[2 * step], bars[2 * step + 1]];
    return last < first ? [first, last] : Array.from({ length: last - first + 1 }, (_, n) => first + n);
  });
  return [...new Set(all)].sort((one, other) => one - other);
}
