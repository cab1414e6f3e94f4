/**
 * The worker that answers questions: indexes are loaded, made ready and gone through here, so that
 * nobody's typing or scrolling waits for it.
 *
 * A message has `way`, `shelf`, the `fields` of a new question or none for more of the last one's
 * passages, and `from`, the first passage that is wanted. What comes back has `said`, whether the
 * question was understood, how many passages there are, and `items`, the next of them as HTML.
 */

import { standBy } from "./index-files.js";
import { listed } from "./results.js";

const AT_ONCE = 12;

/**
 * @typedef {object} Found
 * @property {string} said how many there are, or why there are none
 * @property {boolean} understood
 * @property {number} count of passages
 * @property {(from: number, to: number) => Promise<import("./results.js").Passage[]>} passages
 */

/** @type {Record<string, () => Promise<{ answer: (fields: Record<string, string>) => Promise<Found> }>>} */
const WAYS = {
  chords: () => import("./answer-chords.js"),
  tune: () => import("./answer-tune.js"),
  beat: () => import("./answer-beat.js"),
};
/** @type {Map<string, Found>} */
const last = new Map();

addEventListener("message", async ({ data: { number, way, shelf, fields, from } }) => {
  try {
    standBy(shelf);
    if (fields) last.set(way, await (await WAYS[way]()).answer(fields));
    const { said, understood, count, passages } = /** @type {Found} */ (last.get(way));
    const items = await listed(await passages(from, Math.min(from + AT_ONCE, count)));
    postMessage({ number, said, understood, count, items, next: Math.min(from + AT_ONCE, count) });
  } catch {
    postMessage({ number });
  }
});
