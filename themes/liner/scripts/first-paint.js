/**
 * Sets what the reader chose before anything is painted, so that no page flashes up in the other
 * scheme and nothing moves. No module: a module would run after the first paint.
 */
for (const name of ["scheme", "lengths"]) {
  try {
    document.documentElement.dataset[name] = localStorage.getItem(`liner.${name}`) ?? "";
  } catch {
    // A device that keeps nothing decides itself.
  }
}
