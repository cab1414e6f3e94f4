/** Tunes looked up by notes, degrees or a contour, or played on a small keyboard. */

import { makeFinder } from "./finder.js";
import { makeKeyboard } from "./keyboard.js";

const FIELDS = ["tune", "rhythm", "lines"];
const SHARPS = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"];
const LEVEL = 0.12;

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#tune_form"));
  if (!form) return () => {};
  const listening = new AbortController();
  const leaveKeyboard = setUpKeyboard(form, listening.signal);
  const leave = makeFinder(form, { way: "tune", names: FIELDS });
  return () => {
    listening.abort();
    leaveKeyboard();
    leave();
  };
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
