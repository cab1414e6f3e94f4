/** Progressions looked up by chords or numerals; the last questions are kept on the device. */

import { makeFinder } from "./finder.js";

const FIELDS = ["chords", "loop", "exact", "key"];
const KEPT = "liner.chords";
const MOST_KEPT = 8;

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#chords_form"));
  if (!form) return () => {};
  offerRecent(form);
  return makeFinder(form, {
    way: "chords",
    names: FIELDS,
    understood: ({ chords }) => remember(form, chords),
  });
}

/** @param {HTMLFormElement} form @param {string} chords */
function remember(form, chords) {
  const others = recent().filter((one) => one !== chords);
  try {
    localStorage.setItem(KEPT, JSON.stringify([chords, ...others].slice(0, MOST_KEPT)));
  } catch {
    return; // a device that keeps nothing
  }
  offerRecent(form);
}

/** @returns {string[]} */
function recent() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "[]");
    return Array.isArray(kept) ? kept.filter((one) => typeof one === "string") : [];
  } catch {
    return [];
  }
}

/** @param {HTMLFormElement} form */
function offerRecent(form) {
  const list = /** @type {Element} */ (form.querySelector("#chords_recent"));
  list.replaceChildren(...recent().map((chords) => new Option("", chords)));
}
