/** Questions to the worker that answers them (answering.js); it is started with the first one. */

import { shelf } from "./index-files.js";

/**
 * @typedef {object} Answer
 * @property {string} said how many passages there are, or why there are none
 * @property {boolean} understood
 * @property {number} count of passages
 * @property {string} items the first or next of them, as HTML
 * @property {number} next the first one that was not told yet
 */

/** @type {Worker | undefined} */
let worker;
/** @type {Map<number, [(answer: Answer) => void, (wrong: Error) => void]>} */
const waiting = new Map();
let asked = 0;

function start() {
  const started = new Worker(new URL("answering.js", import.meta.url), { type: "module" });
  started.addEventListener("message", ({ data }) => {
    const [done, fail] = waiting.get(data.number) ?? [];
    waiting.delete(data.number);
    if ("said" in data) done?.(data);
    else fail?.(new Error("an index could not be loaded"));
  });
  started.addEventListener("error", () => {
    for (const [, fail] of waiting.values()) fail(new Error("the worker could not be started"));
    waiting.clear();
    worker = undefined;
  });
  return started;
}

/**
 * Asks a question, or for more passages of the last one.
 *
 * @param {string} way chords, tune or beat
 * @param {Record<string, string> | null} fields the question; null for more
 * @param {number} [from] the first passage that is wanted
 * @returns {Promise<Answer>}
 */
export function ask(way, fields, from = 0) {
  worker ??= start();
  const number = ++asked;
  const answered = new Promise((done, fail) => waiting.set(number, [done, fail]));
  worker.postMessage({ number, way, shelf: new URL(shelf(), location.href).href, fields, from });
  return /** @type {Promise<Answer>} */ (answered);
}
