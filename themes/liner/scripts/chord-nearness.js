/**
 * The progressions that come nearest to some chords, for when none holds them: the least cost of
 * turning what is asked into chords that follow each other there, in any key. A chord with other
 * extensions costs 1, another chord on the same root 2, any other chord 4, and so does one too many
 * or too few. Looked at are charts that hold at least half of the chords, up to extensions.
 */

/**
 * @typedef {import("./chord-reading.js").Asked} Asked
 * @typedef {import("./chord-search.js").Row} Row
 * @typedef {import("./chord-search.js").Symbol} Symbol
 * @typedef {object} Near
 * @property {Row} row
 * @property {number} cost
 * @property {number} shift
 * @property {[asked: number, step: number][]} pairs places in what is asked beside steps of the row,
 *   -1 where one of them has none
 */

const [EXTENSION, QUALITY, OTHER, GAP] = [1, 2, 4, 4];
const MOST = 24;

/** @param {number} number */
const mod = (number) => ((number % 12) + 12) % 12;

/**
 * @param {Row[]} rows
 * @param {Symbol[]} symbols
 * @param {Asked[]} chords
 * @param {{ numerals?: boolean, sameKey?: boolean }} [how]
 * @returns {Near[]} the nearest first; of equals those of the smaller transposition
 */
export function nearest(rows, symbols, chords, { numerals, sameKey } = {}) {
  /** @type {Near[]} */
  const found = [];
  // No more than half of all chords may be quite other ones.
  let worst = (chords.length * OTHER) / 2;
  for (const row of rows) {
    const key = numerals ? row.tonic : sameKey ? 0 : undefined;
    if (key !== undefined && key < 0) continue;
    const near = nearestIn(row, symbols, chords, key, worst);
    if (!near) continue;
    found.push(near);
    if (found.length === 2 * MOST) worst = keepBest(found);
  }
  keepBest(found);
  return found;
}

/** Leaves the best ones and returns the cost of the last of them. @param {Near[]} found */
function keepBest(found) {
  found.sort((one, other) => one.cost - other.cost || far(one.shift) - far(other.shift));
  found.splice(MOST);
  return found.at(-1)?.cost ?? 0;
}

/** @param {number} shift */
const far = (shift) => (shift <= 6 ? 2 * shift : 2 * (12 - shift) + 1);

/**
 * @param {Row} row
 * @param {Symbol[]} symbols
 * @param {Asked[]} chords
 * @param {number | undefined} key
 * @param {number} worst
 * @returns {Near | undefined}
 */
function nearestIn(row, symbols, chords, key, worst) {
  const loop = row.steps.slice(row.start, row.start + row.length);
  const places = row.steps.map((_, n) => n).concat(loop.map((_, n) => row.start + n));
  const text = places.map((place) => symbols[row.steps[place]]);
  const held = new Set(text.map(([, root, , family]) => `${root} ${family}`));
  const shifts = key === undefined ? SHIFTS : [key];
  /** @type {Near | undefined} */
  let best;
  for (const shift of shifts) {
    const known = chords.filter(({ root, family }) => held.has(`${mod(root + shift)} ${family}`));
    if (2 * known.length < chords.length) continue;
    const { cost, pairs } = align(chords, text, shift);
    if (cost > worst || (best && cost >= best.cost)) continue;
    best = { row, cost, shift, pairs: pairs.map(([a, at]) => [a, at < 0 ? -1 : places[at]]) };
  }
  return best;
}

const SHIFTS = Array.from({ length: 12 }, (_, n) => n).sort((one, other) => far(one) - far(other));

/**
 * The cheapest way to find the chords somewhere in a text; of equally cheap ones, the one that ends
 * first, and pairs before gaps.
 *
 * @param {Asked[]} chords
 * @param {Symbol[]} text
 * @param {number} shift
 * @returns {{ cost: number, pairs: [number, number][] }}
 */
function align(chords, text, shift) {
  const costs = [new Array(text.length + 1).fill(0)];
  for (const [n, chord] of chords.entries()) {
    const above = costs[n];
    const row = [above[0] + GAP];
    for (const [at, symbol] of text.entries()) {
      const pair = above[at] + substitution(chord, symbol, shift);
      row.push(Math.min(pair, above[at + 1] + GAP, row[at] + GAP));
    }
    costs.push(row);
  }
  const last = costs[chords.length];
  const cost = Math.min(...last);
  /** @type {[number, number][]} */
  const pairs = [];
  for (let [n, at] = [chords.length, last.indexOf(cost)]; n > 0; ) {
    const here = costs[n][at];
    const isPair = at > 0 && here === costs[n - 1][at - 1] + substitution(chords[n - 1], text[at - 1], shift);
    if (isPair) pairs.unshift([--n, --at]);
    else if (here === costs[n - 1][at] + GAP) pairs.unshift([--n, -1]);
    else pairs.unshift([-1, --at]);
  }
  return { cost, pairs };
}

/** @param {Asked} asked @param {Symbol} symbol @param {number} shift */
function substitution(asked, [, root, notes, family], shift) {
  if (mod(asked.root + shift) !== root) return OTHER;
  if (asked.family !== family) return QUALITY;
  return asked.notes === notes ? 0 : EXTENSION;
}
