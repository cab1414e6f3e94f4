/** Tunes looked up by notes, degrees or a contour, or played on a small keyboard. */

import { fieldsOf, makeFinder } from "./finder.js";
import { makeKeyboard } from "./keyboard.js";
import { escape, load } from "./results.js";
import { read } from "./tune-reading.js";
import { decode, hasRhythm, search, searchContour } from "./tune-search.js";

/**
 * @typedef {import("./tune-search.js").Row} Row
 * @typedef {import("./tune-search.js").Match} Match
 * @typedef {import("./tune-search.js").Question} Question
 */

const FIELDS = ["tune", "rhythm"];
const SHARPS = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"];
const FLATS = ["C", "D♭", "D", "E♭", "E", "F", "G♭", "G", "A♭", "A", "B♭", "B"];
const FEWEST = 3;
const LEVEL = 0.12;

/** @type {Promise<Row[]> | undefined} */
let index;

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#tune_form"));
  if (!form) return () => {};
  const listening = new AbortController();
  const leaveKeyboard = setUpKeyboard(form, listening.signal);
  const leave = makeFinder(form, FIELDS, () => answer(fieldsOf(form, FIELDS)));
  return () => {
    listening.abort();
    leaveKeyboard();
    leave();
  };
}

/** @param {Record<string, string>} fields */
async function answer({ tune, rhythm }) {
  const { question, signs, unread } = read(tune);
  if (unread) return { said: `“${unread}” is no note, degree or direction.`, passages: [] };
  if ((question?.notes.length ?? (signs?.length ?? 0) + 1) < FEWEST) {
    return { said: "Ask for three notes or more.", passages: [] };
  }
  index ??= load("tunes.json").then(decode);
  index.catch(() => (index = undefined));
  const rows = await index;
  const gaps = (rhythm ?? "").split(" ").map(Number).filter((gap) => gap > 0);
  let found = signs ? searchContour(rows, signs) : search(rows, /** @type {Question} */ (question));
  if (question && gaps.length === question.notes.length - 1) {
    found = found.filter((match) => match.way === 0 && hasRhythm(match, gaps));
  }
  const passages = found.map((match) => passage(match, question));
  return { said: say(found), passages };
}

/** @param {Match[]} found */
function say(found) {
  const exact = found.filter(({ way }) => !way).length;
  if (!found.length) return "No chart has this tune, or one that is near it.";
  if (!exact) return "No chart has just this tune; these come near.";
  const near = found.length - exact;
  const first = exact === 1 ? "One line has it" : exact + " lines have it";
  return near ? first + `, ${near} more come near.` : first + ".";
}

/** @param {Match} match @param {Question | undefined} question */
function passage({ row, way, shift, from, count, others, gap }, question) {
  const names = row.flats ? FLATS : SHARPS;
  const name = (/** @type {number} */ midi) => names[((midi % 12) + 12) % 12];
  const asked = question?.notes.map((note) => name(note + shift)) ?? [];
  const notes = row.midi.slice(from, from + count).map((midi, n) => {
    const there = escape(name(midi));
    if (others.includes(n)) return `<li><ins>${there}</ins> <small>for ${asked[n]}</small></li>`;
    if (way === 2 && count > asked.length && n === gap) return `<li><ins>${there}</ins> <small>more</small></li>`;
    return `<li>${there}</li>`;
  });
  if (way === 2 && count < asked.length) notes.splice(gap, 0, `<li><del>${asked[gap]}</del></li>`);
  const note = `<p class="found-song">${escape(row.part)}</p><ol class="found-chords">${notes.join("")}</ol>`;
  return { writeUp: row.writeUp, chart: row.chart, bars: row.bars.slice(from, from + count), note };
}

/** @param {HTMLFormElement} form @param {AbortSignal} signal */
function setUpKeyboard(form, signal) {
  const find = (/** @type {string} */ name) => /** @type {HTMLInputElement} */ (form.querySelector(name));
  const [field, hidden] = [find("[name=tune]"), find("[name=rhythm]")];
  const [sounds, counts] = [find("[data-sounds]"), find("[data-rhythm]")];
  /** @type {AudioContext | undefined} */
  let context;
  /** @type {{ midi: number, when: number }[]} */
  let played = [];
  const write = () => {
    field.value = played.map(({ midi }) => SHARPS[midi % 12] + (Math.floor(midi / 12) - 1)).join(" ");
    const gaps = played.slice(1).map(({ when }, n) => Math.round(when - played[n].when));
    hidden.value = counts.checked ? gaps.join(" ") : "";
  };
  const clear = () => {
    played = [];
    write();
  };
  const leave = makeKeyboard(
    find(".keys"),
    (midi, when) => {
      played.push({ midi, when });
      write();
      if (!sounds.checked) return;
      context ??= new AudioContext();
      const now = context;
      import("./tones.js").then(({ hold }) =>
        hold(now, { sound: "keys", midi, when: now.currentTime, seconds: 0.4, manner: "", level: LEVEL, into: now.destination }),
      );
    },
    signal,
  );
  counts.addEventListener("change", write, { signal });
  find("[data-clear]").addEventListener("click", clear, { signal });
  // What is typed was not played.
  field.addEventListener("input", () => ([played, hidden.value] = [[], ""]), { signal });
  return () => {
    leave();
    context?.close();
  };
}
