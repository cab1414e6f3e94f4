/** The page where passages are looked up: each way of asking is a module of its own. */

/** @type {Array<() => Promise<{ enhance: (root: Document) => () => void }>>} */
const modules = [
  () => import("./find-words.js"),
  () => import("./find-chords.js"),
  () => import("./find-tune.js"),
  () => import("./find-beat.js"),
];

const ready = modules.map((load) => load().then((module) => module.enhance(document)));
Promise.allSettled(ready).then(() => (document.documentElement.dataset.finding = ""));
