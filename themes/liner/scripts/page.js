/**
 * What makes a page lively; without it all text, notation and tables are there all the same.
 *
 * Each module exports `enhance(root)`: it adds its controls inside `root` and returns a function
 * that takes them away again. `data-enhanced` on the document says that all controls are there.
 */

/** @type {Array<() => Promise<{ enhance: (root: Document) => () => void }>>} */
const modules = [
  () => import("./switches.js"),
  () => import("./findings.js"),
  () => import("./hearing.js"),
  () => import("./scheme.js"),
  () => import("./reading-place.js"),
  () => import("./plan.js"),
  () => import("./recording.js"),
  () => import("./take-away.js"),
  () => import("./wide-tables.js"),
];

if (location.search.includes("bars=")) modules.push(() => import("./arrival.js"));

// Each gets a moment in which there is nothing else to do, the first after the page is painted.
const idle = globalThis.requestIdleCallback ?? setTimeout;
const ready = modules.map(async (load) => {
  await new Promise((begin) => idle(begin, { timeout: 999 }));
  (await load()).enhance(document);
});
Promise.allSettled(ready).then(() => (document.documentElement.dataset.enhanced = ""));
