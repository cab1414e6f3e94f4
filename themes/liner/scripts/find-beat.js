/** Beats looked up by a bar of drums on a grid, by tempo and by feel. */

import { makeGrid } from "./beat-grid.js";
import { makeFinder } from "./finder.js";

const FIELDS = ["meter", "steps", "beat", "from", "to", "feel"];

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#beat_form"));
  if (!form) return () => {};
  const listening = new AbortController();
  const grid = makeGrid(form, listening.signal);
  // The meter is always chosen: it alone is no question.
  const leave = makeFinder(form, { way: "beat", names: FIELDS, shown: grid.show, isAsked });
  return () => {
    listening.abort();
    leave();
    grid.leave();
  };
}

/** @param {Record<string, string>} fields */
const isAsked = ({ beat, from, to, feel }) => !!(beat || from || to || feel);
