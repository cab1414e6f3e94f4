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
 * @typedef {import("./tune-index.js").Tunes} Tunes
 * @typedef {object} Match
 * @property {number} row
 * @property {number} way
 * @property {number} shift semitones up from what was asked; 0 to 11 where octaves do not count
 * @property {number} from the first note, counted in its line
 * @property {number} count how many notes of the line match
 * @property {number[]} others places in what was asked that are other notes there
 * @property {number} gap where a note is more (way 2, `count` one more) or missing, -1 without
 * @typedef {object} Question
 * @property {number[]} notes MIDI numbers, or pitch classes where octaves do not count
 * @property {boolean} octaves they count
 * @property {boolean} degrees counted from the tonic
 * @typedef {object} Line the notes that are compared, as numbers or as classes
 * @property {Uint8Array} pitches
 * @property {number[]} notes that were asked
 * @property {number} round 12 where octaves do not count, 0 where they do
 */

const [FOR_ONE, FOR_GAP, FOR_TWO] = [4, 5, 7];
const WAYS = [0, 1, 3]; // by the number of other notes
const [NO_WAY, ANY] = [4, 1000];

/**
 * @param {Tunes} tunes
 * @param {Question} question three notes or more
 * @returns {Match[]} the best first; those with two other notes only where there is nothing better
 */
export function search(tunes, { notes, octaves, degrees }) {
  const line = { pitches: octaves ? tunes.midi : tunes.classes, notes, round: octaves ? 0 : 12 };
  /** @type {Match[]} */
  const found = [];
  let most = notes.length >= FOR_TWO ? 2 : notes.length >= FOR_ONE ? 1 : 0;
  for (let row = 0; row < tunes.count; row++) {
    if (degrees && tunes.tonics[row] < 0) continue;
    const match = bestIn(tunes, row, line, degrees ? tunes.tonics[row] : ANY, most);
    if (!match) continue;
    found.push(match);
    if (match.way < 3) most = Math.min(most, 1);
  }
  found.sort((one, other) => one.way - other.way || far(one.shift, line.round) - far(other.shift, line.round));
  const better = found.filter(({ way }) => way < 3);
  return better.length ? better : found;
}

/** @param {number} shift @param {number} round */
function far(shift, round) {
  if (!round) return 2 * Math.abs(shift) + (shift < 0 ? 1 : 0);
  return shift <= 6 ? 2 * shift : 2 * (12 - shift) + 1;
}

/**
 * @param {Tunes} tunes
 * @param {number} row
 * @param {Line} line
 * @param {number} key the only shift there may be, or `ANY`
 * @param {number} most other notes
 * @returns {Match | undefined}
 */
function bestIn({ firsts }, row, line, key, most) {
  const { pitches, notes, round } = line;
  const [first, end, count] = [firsts[row], firsts[row + 1], notes.length];
  let [way, shift, start, gap, size] = [NO_WAY, 0, 0, -1, count];
  for (let at = first; at + count - 1 <= end && (way || shift); at++) {
    // Nothing worse than what was found is looked for. With so many other notes at most, one of as
    // many and one more is right.
    const limit = Math.min(most, way);
    let [one, other] = [ANY, ANY];
    for (let n = 0; n <= limit && at + count <= end; n++) {
      let up = pitches[at + n] - notes[n];
      if (up < 0) up += round;
      if (up === one || up === other || (key !== ANY && up !== key)) continue;
      [other, one] = [one, up];
      const others = otherNotes(line, at, up, limit);
      const own = others > limit ? NO_WAY : WAYS[others];
      if (own === NO_WAY || own > way || (own === way && far(up, round) >= far(shift, round))) continue;
      [way, shift, start, gap, size] = [own, up, at, -1, count];
    }
    if (count < FOR_GAP || way < 2) continue;
    let up = pitches[at] - notes[0];
    if (up < 0) up += round;
    if ((key !== ANY && up !== key) || (way === 2 && far(up, round) >= far(shift, round))) continue;
    const found = gapAt(line, at, end, up);
    if (found) [way, shift, start, gap, size] = [2, up, at, found.gap, found.count];
  }
  if (way === NO_WAY) return undefined;
  const others = way === 2 ? [] : placesOf(line, start, shift);
  return { row, way, shift, from: start - first, count: size, others, gap };
}

/**
 * How many notes from `at` on are other ones, `up` semitones higher; more than `most` are not counted.
 *
 * @param {Line} line
 * @param {number} at
 * @param {number} up
 * @param {number} most
 */
function otherNotes({ pitches, notes, round }, at, up, most) {
  let others = 0;
  for (let n = 0; n < notes.length; n++) {
    const distance = pitches[at + n] - notes[n];
    if (distance !== up && distance !== up - round && ++others > most) break;
  }
  return others;
}

/** The places in what was asked that are other notes there. @param {Line} line @param {number} at @param {number} up */
function placesOf({ pitches, notes, round }, at, up) {
  return [...notes.keys()].filter((n) => ![up, up - round].includes(pitches[at + n] - notes[n]));
}

/**
 * Where one note more, or one fewer, makes a line match: never before the first or after the last.
 *
 * @param {Line} line
 * @param {number} from
 * @param {number} end of the line
 * @param {number} up
 */
function gapAt({ pitches, notes, round }, from, end, up) {
  const count = notes.length;
  const isSame = (/** @type {number} */ at, /** @type {number} */ n) => {
    const distance = pitches[at] - notes[n];
    return distance === up || distance === up - round;
  };
  let same = 0;
  while (same < count && from + same < end && isSame(from + same, same)) same++;
  const rest = (/** @type {number} */ first, /** @type {number} */ step) => {
    for (let n = first; n < count; n++) if (!isSame(from + n + step, n)) return false;
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
 * @param {Tunes} tunes
 * @param {number[]} signs 1, -1 and 0
 * @returns {Match[]}
 */
export function searchContour({ count, firsts, midi }, signs) {
  /** @type {Match[]} */
  const found = [];
  for (let row = 0; row < count; row++) {
    const last = firsts[row + 1] - signs.length;
    for (let at = firsts[row]; at < last; at++) {
      let n = 0;
      while (n < signs.length && Math.sign(midi[at + n + 1] - midi[at + n]) === signs[n]) n++;
      if (n < signs.length) continue;
      found.push({ row, way: 0, shift: 0, from: at - firsts[row], count: signs.length + 1, others: [], gap: -1 });
      break;
    }
  }
  return found;
}

/**
 * Whether the notes of a match come at the times that were played, at any speed: no gap is more than
 * a third longer or shorter beside the others than it was played.
 *
 * @param {number[]} there the ticks from note to note of the whole line
 * @param {number} from the first note that matches
 * @param {number[]} gaps as played, one fewer than notes
 */
export function hasRhythm(there, from, gaps) {
  const ratios = gaps.map((gap, n) => there[from + n] / Math.max(gap, 1e-9));
  const middle = [...ratios].sort((one, other) => one - other)[ratios.length >> 1];
  return ratios.every((ratio) => ratio <= middle * (4 / 3) && ratio >= middle * (3 / 4));
}
