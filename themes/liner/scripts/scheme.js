/** The switch between a light page and a dark one; what was chosen stays on the device. */

const KEPT_AS = "liner.scheme";

/**
 * Shows the switch and lets it work, in all open pages of the site at once.
 * @param {Document} root
 * @returns {() => void}
 */
export function enhance(root) {
  const label = /** @type {HTMLElement | null} */ (root.querySelector(".scheme"));
  const choice = label?.querySelector("select");
  if (!label || !choice) return () => {};
  const page = root.documentElement;
  const ended = new AbortController();
  const { signal } = ended;

  const choose = (/** @type {string} */ scheme) => {
    page.dataset.scheme = scheme;
    choice.value = scheme;
    if (choice.selectedIndex < 0) choice.value = "";
  };

  choose(page.dataset.scheme ?? "");
  choice.addEventListener("change", () => { choose(choice.value); keep(choice.value); }, { signal });
  addEventListener("storage", (change) => {
    if (change.key === KEPT_AS) choose(change.newValue ?? "");
  }, { signal });
  label.hidden = false;
  return () => {
    ended.abort();
    label.hidden = true;
  };
}

/** @param {string} scheme */
function keep(scheme) {
  try {
    if (scheme) localStorage.setItem(KEPT_AS, scheme);
    else localStorage.removeItem(KEPT_AS);
  } catch {
    // The choice holds for this page.
  }
}
