/**
 * Sets what the reader chose before anything is painted, so that no page flashes up in the other
 * scheme, no row shows that is switched off, and nothing moves. No module: a module would run
 * after the first paint.
 */
const page = document.documentElement.dataset;
for (const name of ["scheme", "lengths", "show"]) {
  try {
    const kept = localStorage.getItem(`liner.${name}`);
    if (kept) page[name] = kept;
  } catch {
    // A device that keeps nothing decides itself.
  }
}
// What the address asks for goes before what was chosen.
const asked = new URLSearchParams(location.search).get("show");
if (asked) page.show = asked;
