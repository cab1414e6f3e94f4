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

/**
 * @typedef {import("./chord-reading.js").Asked} Asked
 * @typedef {[text: string, root: number, notes: string, family: string]} Symbol
 * @typedef {object} Row A progression: its steps as places among the symbols, its bars in pairs.
 * @property {number} writeUp
 * @property {number} chart
 * @property {number} tonic
 * @property {number} start of its loop
 * @property {number} length of its loop, 0 without
 * @property {number[]} steps
 * @property {number[]} bars first and last bar of every step
 * @property {Line} full with the very notes
 * @property {Line} core up to extensions, equal neighbours as one
 * @typedef {object} Line
 * @property {number[]} roots
 * @property {string[]} signs
 * @property {number[]} at the step where each place starts, and the number of steps at the end
 * @property {number} from the place where the loop starts
 * @property {number} cell the number of places of one pass of the loop, 0 without
 * @typedef {object} Match
 * @property {Row} row
 * @property {number} way
 * @property {number} shift semitones up from what was asked, 0 to 11
 * @property {number[]} steps those that match, in order
 */

const FIRST = 35;
const MIDDLE = 79;

/** @param {number} number */
const mod = (number) => ((number % 12) + 12) % 12;

/** @param {{ symbols: Symbol[], rows: any[] }} file @returns {{ symbols: Symbol[], rows: Row[] }} */
export function decode({ symbols, rows }) {
  return { symbols, rows: rows.map((row) => decodeRow(row, symbols)) };
}

/** @param {any[]} row @param {Symbol[]} symbols @returns {Row} */
function decodeRow([writeUp, chart, tonic, , start, length, signs, spread], symbols) {
  const steps = Array.from({ length: signs.length }, (_, n) => place(signs.charCodeAt(n)));
  const bars = spread ? readBars(spread) : steps.flatMap((_, n) => [n + 1, n + 1]);
  const row = { writeUp, chart, tonic, start, length, steps, bars };
  return {
    ...row,
    full: line(row, symbols, (symbol) => symbol[2], false),
    core: line(row, symbols, (symbol) => symbol[3], true),
  };
}

/** @param {number} code */
const place = (code) => (code < 0xe000 ? code : code - 0xe000 + 0xd800) - FIRST;

/** @param {string} spread */
function readBars(spread) {
  const bars = [];
  let last = 0;
  for (let n = 0; n < spread.length; n += 2) {
    const first = last + spread.charCodeAt(n) - MIDDLE;
    last = first + spread.charCodeAt(n + 1) - MIDDLE;
    bars.push(first, last);
  }
  return bars;
}

/**
 * @param {{ start: number, length: number, steps: number[] }} row
 * @param {Symbol[]} symbols
 * @param {(symbol: Symbol) => string} sign
 * @param {boolean} merged equal neighbours are one place
 * @returns {Line}
 */
function line({ start, length, steps }, symbols, sign, merged) {
  /** @type {Line} */
  const made = { roots: [], signs: [], at: [], from: 0, cell: 0 };
  const { roots, signs, at } = made;
  for (const [n, step] of steps.entries()) {
    const [root, own] = [symbols[step][1], sign(symbols[step])];
    if (!merged || roots.at(-1) !== root || signs.at(-1) !== own) {
      roots.push(root);
      signs.push(own);
      at.push(n);
    }
    if (n === start) made.from = roots.length - 1;
    if (length && n === start + length - 1) made.cell = roots.length - made.from;
  }
  // A loop that ends with the chord that it starts with, up to extensions, has one place fewer.
  const last = made.from + made.cell - 1;
  const closes = roots[last] === roots[made.from] && signs[last] === signs[made.from];
  if (merged && made.cell > 1 && closes) made.cell -= 1;
  at.push(steps.length);
  return made;
}

/**
 * Charts that hold the chords, the best first.
 *
 * @param {Row[]} rows
 * @param {Asked[]} chords two or more
 * @param {{ numerals?: boolean, sameKey?: boolean, exact?: boolean, loop?: boolean }} [how]
 *   `exact` counts extensions and basses, `loop` only what is the whole or a loop
 * @returns {Match[]}
 */
export function search(rows, chords, { numerals, sameKey, exact, loop } = {}) {
  const full = { roots: chords.map(({ root }) => root), signs: chords.map(({ notes }) => notes) };
  const core = merge(chords);
  /** @type {Match[]} */
  const found = [];
  for (const row of rows) {
    const key = numerals ? row.tonic : sameKey ? 0 : undefined;
    if (key !== undefined && key < 0) continue;
    const best =
      bestWay(row, row.full, full, key, loop, 0) ??
      (exact || core.roots.length < 2 ? undefined : bestWay(row, row.core, core, key, loop, 3));
    if (best) found.push(best);
  }
  return found.sort((one, other) => one.way - other.way || far(one.shift) - far(other.shift));
}

/** The smaller transposition first, the higher of two. @param {number} shift */
const far = (shift) => (shift <= 6 ? 2 * shift : 2 * (12 - shift) + 1);

/** @param {Asked[]} chords */
function merge(chords) {
  /** @type {{ roots: number[], signs: string[] }} */
  const core = { roots: [], signs: [] };
  for (const { root, family } of chords) {
    if (core.roots.at(-1) === root && core.signs.at(-1) === family) continue;
    core.roots.push(root);
    core.signs.push(family);
  }
  return core;
}

/**
 * @param {Row} row
 * @param {Line} line
 * @param {{ roots: number[], signs: string[] }} asked
 * @param {number | undefined} key the only shift that counts
 * @param {boolean | undefined} loop
 * @param {number} way the first of three
 * @returns {Match | undefined}
 */
function bestWay(row, line, asked, key, loop, way) {
  const count = asked.roots.length;
  const all = line.roots.length;
  if (count === all || count === line.cell) {
    const from = count === all ? 0 : line.from;
    const shift = holds(line, asked, (n) => from + n, key);
    if (shift >= 0) return { row, way, shift, steps: steps(line, from, count, all) };
  }
  if (count === line.cell) {
    /** @type {Match | undefined} */
    let best;
    for (let turn = 1; turn < count; turn++) {
      const turned = (/** @type {number} */ n) => line.from + ((turn + n) % count);
      const shift = holds(line, asked, turned, key);
      if (shift < 0 || (best && far(shift) >= far(best.shift))) continue;
      const places = asked.roots.map((_, n) => turned(n));
      best = { row, way: way + 1, shift, steps: places.flatMap((at) => steps(line, at, 1, all)) };
    }
    if (best) return best;
  }
  return loop ? undefined : within(row, line, asked, key, way + 2);
}

/**
 * The place in a row, or in its loop as it goes round and round, that holds what is asked.
 *
 * @param {Row} row
 * @param {Line} line
 * @param {{ roots: number[], signs: string[] }} asked
 * @param {number | undefined} key
 * @param {number} way
 * @returns {Match | undefined}
 */
function within(row, line, asked, key, way) {
  const count = asked.roots.length;
  const all = line.roots.length;
  /** @type {Match | undefined} */
  let best;
  /** @param {number} from @param {(n: number) => number} at */
  const consider = (from, at) => {
    const shift = holds(line, asked, at, key);
    if (shift < 0 || (best && far(shift) >= far(best.shift))) return;
    const places = asked.roots.map((_, n) => at(n));
    best = { row, way, shift, steps: places.flatMap((one) => steps(line, one, 1, all)) };
  };
  for (let from = 0; from + count <= all; from++) consider(from, (n) => from + n);
  // Round and round: a loop that is written once has a seam as well.
  for (let turn = 0; turn < line.cell && count <= 4 * line.cell; turn++) {
    consider(turn, (n) => line.from + ((turn + n) % line.cell));
  }
  return best;
}

/**
 * How many semitones up a line holds what is asked, -1 where it does not.
 *
 * @param {Line} line
 * @param {{ roots: number[], signs: string[] }} asked
 * @param {(n: number) => number} at
 * @param {number | undefined} key
 */
function holds({ roots, signs }, asked, at, key) {
  const shift = mod(roots[at(0)] - asked.roots[0]);
  if (key !== undefined && shift !== key) return -1;
  for (let n = 0; n < asked.roots.length; n++) {
    const place = at(n);
    if (signs[place] !== asked.signs[n]) return -1;
    if (mod(roots[place] - asked.roots[n]) !== shift) return -1;
  }
  return shift;
}

/**
 * The steps of some places in a row.
 *
 * @param {Line} line
 * @param {number} from
 * @param {number} count
 * @param {number} all
 */
function steps({ at }, from, count, all) {
  const end = at[Math.min(from + count, all)];
  return Array.from({ length: end - at[from] }, (_, n) => at[from] + n);
}
