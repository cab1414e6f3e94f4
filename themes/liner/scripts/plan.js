/** The form plan: the choice of lengths in bars, in time or in both; it stays on the device. */

const KEPT_AS = "liner.lengths";

/**
 * Lets the choice of lengths work, in all plans of the page at once.
 * @param {Document} root
 * @returns {() => void}
 */
export function enhance(root) {
  const ended = new AbortController();
  /** @type {NodeListOf<HTMLElement>} */
  const switches = root.querySelectorAll(".plan-lengths");
  const choices = [...switches].flatMap((place) => place.querySelector("select") ?? []);

  const choose = (/** @type {string} */ lengths) => {
    root.documentElement.dataset.lengths = lengths;
    for (const choice of choices) {
      choice.value = lengths;
      if (choice.selectedIndex < 0) choice.value = "";
    }
  };

  choose(root.documentElement.dataset.lengths ?? "");
  for (const choice of choices) {
    choice.addEventListener("change", () => { choose(choice.value); keep(choice.value); },
      { signal: ended.signal });
  }
  for (const place of switches) place.hidden = false;
  return () => {
    ended.abort();
    for (const place of switches) place.hidden = true;
  };
}

/** @param {string} lengths */
function keep(lengths) {
  try {
    if (lengths) localStorage.setItem(KEPT_AS, lengths);
    else localStorage.removeItem(KEPT_AS);
  } catch {
    // The choice holds for this page.
  }
}
