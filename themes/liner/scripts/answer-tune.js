/** What is said of a tune that was asked for, by notes, degrees or a contour. */

import { mod } from "./columns.js";
import { load, once } from "./index-files.js";
import { escape, isolated } from "./names.js";
import { nothing, PART } from "./results.js";
import { decode, readTimes } from "./tune-index.js";
import { read } from "./tune-reading.js";
import { hasRhythm, search, searchContour } from "./tune-search.js";

/**
 * @typedef {import("./tune-index.js").Tunes} Tunes
 * @typedef {import("./tune-search.js").Match} Match
 * @typedef {import("./tune-search.js").Question} Question
 */

const SHARPS = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"];
const FLATS = ["C", "D♭", "D", "E♭", "E", "F", "G♭", "G", "A♭", "A", "B♭", "B"];
const FEWEST = 3;
/** What lines are called, by the file that they are in. */
const LINES = /** @type {Record<string, [one: string, all: string]>} */ ({
  any: ["line", "lines"],
  sung: ["sung line", "sung lines"],
  played: ["played line", "played lines"],
  bass: ["bass line", "bass lines"],
});
const ANY = "any";
const KINDS = ["sung", "played", "bass"];

/** @type {Map<string, () => Promise<Tunes>>} */
const indexes = new Map(
  Object.keys(LINES).map((kind) => [kind, once(async () => decode(await Promise.all(filesOf(kind).map(load))))]),
);

/** @param {string} kind */
const filesOf = (kind) => KINDS.filter((one) => kind === ANY || one === kind).map((one) => `tunes-${one}.json`);

/** @param {Record<string, string>} fields @returns {Promise<import("./answering.js").Found>} */
export async function answer({ tune, rhythm, lines = ANY }) {
  const { question, signs, unread } = read(tune);
  if (unread) return nothing(`“${unread}” is no note, degree or direction.`);
  if ((question?.notes.length ?? (signs?.length ?? 0) + 1) < FEWEST) {
    return nothing("Ask for three notes or more.");
  }
  const kind = lines in LINES ? lines : ANY;
  const tunes = await /** @type {() => Promise<Tunes>} */ (indexes.get(kind))();
  const all = signs ? searchContour(tunes, signs) : search(tunes, /** @type {Question} */ (question));
  const gaps = (rhythm ?? "").split(" ").map(Number).filter((gap) => gap > 0);
  const isPlayed = question && gaps.length === question.notes.length - 1;
  const found = isPlayed ? await inRhythm(tunes, all, gaps) : all;
  const passages = (/** @type {number} */ from, /** @type {number} */ to) =>
    Promise.all(found.slice(from, to).map((match) => passage(tunes, match, question)));
  return { said: say(found, LINES[kind]), understood: true, count: found.length, passages };
}

/**
 * Matches in the rhythm that was played.
 *
 * @param {Tunes} tunes
 * @param {Match[]} found
 * @param {number[]} gaps
 */
async function inRhythm(tunes, found, gaps) {
  const same = found.filter(({ way }) => !way);
  const lines = await Promise.all(same.map(({ row }) => timesOf(tunes, row)));
  return same.filter(({ from }, n) => hasRhythm(lines[n].gaps, from, gaps));
}

/** @param {Tunes} tunes @param {number} row */
async function timesOf({ writeUps, lines }, row) {
  const part = await load(`lines-${Math.floor(writeUps[row] / PART)}.json`);
  return readTimes(part[writeUps[row] % PART][lines[row]]);
}

/** @param {Match[]} found @param {[one: string, all: string]} called */
function say(found, [line, lines]) {
  const exact = found.filter(({ way }) => !way).length;
  if (!found.length) return `No ${line} has this tune, or one that is near it.`;
  if (!exact) return `No ${line} has just this tune; these come near.`;
  const near = found.length - exact;
  const first = exact === 1 ? `One ${line} has it` : `${exact} ${lines} have it`;
  return near ? first + `, ${near} more come near.` : first + ".";
}

/** @param {Tunes} tunes @param {Match} match @param {Question | undefined} question */
async function passage(tunes, { row, way, shift, from, count, others, gap }, question) {
  const { bars } = await timesOf(tunes, row);
  const first = tunes.firsts[row] + from;
  const names = tunes.flats[row] ? FLATS : SHARPS;
  const name = (/** @type {number} */ midi) => names[mod(midi)];
  const asked = question?.notes.map((note) => name(note + shift)) ?? [];
  const notes = [...tunes.midi.subarray(first, first + count)].map((midi, n) => {
    const there = escape(name(midi));
    if (others.includes(n)) return `<li><ins>${there}</ins> <small>for ${asked[n]}</small></li>`;
    if (way === 2 && count > asked.length && n === gap) return `<li><ins>${there}</ins> <small>more</small></li>`;
    return `<li>${there}</li>`;
  });
  if (way === 2 && count < asked.length) notes.splice(gap, 0, `<li><del>${asked[gap]}</del></li>`);
  const note = `<p class="found-song">${isolated(tunes.parts[row])}</p><ol class="found-chords">${notes.join("")}</ol>`;
  return { writeUp: tunes.writeUps[row], chart: tunes.charts[row], bars: bars.slice(from, from + count), note };
}
