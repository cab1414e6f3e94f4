/**
 * Tunes that hold some notes, wherever they start and however they are transposed. For every line
 * the best way is told, best first:
 *
 *   0 note for note, 1 with one other note (of four or more), 2 with a note more or less (of five or
 *   more), 3 with two other notes (of seven or more).
 *
 * Of equal ways the smaller transposition comes first, the higher of two, then the earlier place; of
 * lines in equal ways the order of the archive decides. A contour is found sign for sign.
 */

/**
 * @typedef {object} Row
 * @property {number} writeUp
 * @property {number} chart
 * @property {string} part
 * @property {number} tonic
 * @property {boolean} flats its key has flats
 * @property {number[]} midi
 * @property {number[]} gaps ticks to the next note
 * @property {number[]} bars
 * @typedef {object} Match
 * @property {Row} row
 * @property {number} way
 * @property {number} shift semitones up from what was asked; 0 to 11 where octaves do not count
 * @property {number} from the first note
 * @property {number} count how many notes of the line match
 * @property {number[]} others places in what was asked that are other notes there
 * @property {number} gap where a note is more (way 2, `count` one more) or missing, -1 without
 * @typedef {object} Question
 * @property {number[]} notes MIDI numbers, or pitch classes where octaves do not count
 * @property {boolean} octaves they count
 * @property {boolean} degrees counted from the tonic
 */

const [FIRST, MIDDLE] = [35, 79];
const [FOR_ONE, FOR_GAP, FOR_TWO] = [4, 5, 7];

/** @param {{ gaps: number[], parts: string[], rows: any[] }} file @returns {Row[]} */
export function decode({ gaps, parts, rows }) {
  return rows.map(([writeUp, chart, part, tonic, flats, pitches, spread, bars]) => ({
    writeUp,
    chart,
    part: parts[part],
    tonic,
    flats: flats === 1,
    midi: codes(pitches, FIRST),
    gaps: codes(spread, FIRST).map((place) => gaps[place]),
    bars: sums(codes(bars, MIDDLE)),
  }));
}

/** @param {string} text @param {number} less */
function codes(text, less) {
  const found = new Array(text.length);
  for (let n = 0; n < text.length; n++) found[n] = text.charCodeAt(n) - less;
  return found;
}

/** @param {number[]} steps */
function sums(steps) {
  let sum = 0;
  return steps.map((step) => (sum += step));
}

/** @param {number} number */
const mod = (number) => ((number % 12) + 12) % 12;

/**
 * @param {Row[]} rows
 * @param {Question} question three notes or more
 * @returns {Match[]} the best first; those with two other notes only where there is nothing better
 */
export function search(rows, question) {
  /** @type {Match[]} */
  const found = [];
  for (const row of rows) {
    if (question.degrees && row.tonic < 0) continue;
    const match = inRow(row, question);
    if (match) found.push(match);
  }
  const rank = (/** @type {Match} */ match) => far(match.shift, question.octaves);
  found.sort((one, other) => one.way - other.way || rank(one) - rank(other));
  const better = found.filter(({ way }) => way < 3);
  return better.length ? better : found;
}

/** @param {number} shift @param {boolean} octaves */
const far = (shift, octaves) => {
  if (octaves) return 2 * Math.abs(shift) + (shift < 0 ? 1 : 0);
  return shift <= 6 ? 2 * shift : 2 * (12 - shift) + 1;
};

/** @param {Row} row @param {Question} question @returns {Match | undefined} */
function inRow(row, { notes, octaves, degrees }) {
  const { midi } = row;
  const count = notes.length;
  const key = degrees ? row.tonic : undefined;
  const most = count >= FOR_TWO ? 2 : count >= FOR_ONE ? 1 : 0;
  /** How far a note of the line is above one that was asked. @param {number} at @param {number} n */
  const above = (at, n) => (octaves ? midi[at] - notes[n] : mod(midi[at] - notes[n]));
  /** @type {Match | undefined} */
  let best;
  /** @param {Omit<Match, "row">} match */
  const consider = (match) => {
    const better =
      !best || match.way < best.way || (match.way === best.way && far(match.shift, octaves) < far(best.shift, octaves));
    if (better) best = { row, ...match };
  };
  for (let from = 0; from + count - 1 <= midi.length; from++) {
    // With at most two other notes, one of the first three is right.
    const tried = [];
    for (let n = 0; n <= most && from + count <= midi.length; n++) {
      const shift = above(from + n, n);
      if (tried.includes(shift) || (key !== undefined && shift !== key)) continue;
      tried.push(shift);
      const others = otherNotes(shift, from, count, most, above);
      if (others) consider({ way: WAYS[others.length], shift, from, count, others, gap: -1 });
    }
    if (count < FOR_GAP || (best && best.way < 2)) continue;
    const shift = above(from, 0);
    if (key !== undefined && shift !== key) continue;
    const gap = gapAt(shift, from, count, midi.length, above);
    if (gap) consider({ way: 2, shift, from, others: [], ...gap });
  }
  return best;
}

const WAYS = [0, 1, 3];

/**
 * @param {number} shift
 * @param {number} from
 * @param {number} count
 * @param {number} most
 * @param {(at: number, n: number) => number} above
 */
function otherNotes(shift, from, count, most, above) {
  const others = [];
  for (let n = 0; n < count; n++) {
    if (above(from + n, n) === shift) continue;
    others.push(n);
    if (others.length > most) return undefined;
  }
  return others;
}

/**
 * Where one note more, or one fewer, makes a line match: never before the first or after the last.
 *
 * @param {number} shift
 * @param {number} from
 * @param {number} count
 * @param {number} end
 * @param {(at: number, n: number) => number} above
 */
function gapAt(shift, from, count, end, above) {
  let same = 0;
  while (same < count && from + same < end && above(from + same, same) === shift) same++;
  const rest = (/** @type {number} */ first, /** @type {number} */ step) => {
    for (let n = first; n < count; n++) if (above(from + n + step, n) !== shift) return false;
    return true;
  };
  const more = Math.min(same, count - 1);
  if (more > 0 && from + count + 1 <= end && rest(more, 1)) return { gap: more, count: count + 1 };
  const fewer = Math.min(same, count - 2);
  if (fewer > 0 && from + count - 1 <= end && rest(fewer + 1, -1)) return { gap: fewer, count: count - 1 };
  return undefined;
}

/**
 * Lines that go up, down and on as the signs say.
 *
 * @param {Row[]} rows
 * @param {number[]} signs 1, -1 and 0
 * @returns {Match[]}
 */
export function searchContour(rows, signs) {
  /** @type {Match[]} */
  const found = [];
  for (const row of rows) {
    const { midi } = row;
    const last = midi.length - signs.length;
    for (let from = 0; from < last; from++) {
      let n = 0;
      while (n < signs.length && Math.sign(midi[from + n + 1] - midi[from + n]) === signs[n]) n++;
      if (n < signs.length) continue;
      found.push({ row, way: 0, shift: 0, from, count: signs.length + 1, others: [], gap: -1 });
      break;
    }
  }
  return found;
}

/**
 * Whether the notes of a match come at the times that were played, at any speed: no gap is more than
 * a third longer or shorter beside the others than it was played.
 *
 * @param {Match} match one note for note
 * @param {number[]} gaps as played, one fewer than notes
 */
export function hasRhythm({ row, from }, gaps) {
  const ratios = gaps.map((gap, n) => row.gaps[from + n] / Math.max(gap, 1e-9));
  const middle = [...ratios].sort((one, other) => one - other)[ratios.length >> 1];
  return ratios.every((ratio) => ratio <= middle * (4 / 3) && ratio >= middle * (3 / 4));
}
