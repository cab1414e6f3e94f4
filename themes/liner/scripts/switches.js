/**
 * Which rows the charts show and by which names they go. The choice is kept on the device and
 * stands in the address, `?show=degrees+fingered`, so that a link keeps it: the words of all that
 * is on, `plain` for nothing.
 */

const KEPT = "liner.show";
const USUAL = "degrees roles numerals";
const OTHER = "fingered";

/** @param {Document | Element} root */
export function enhance(root) {
  const listening = new AbortController();
  const boxes = /** @type {HTMLInputElement[]} */ ([...root.querySelectorAll(".switches input")]);
  const places = [...root.querySelectorAll(".ways")];
  const kept = recall();
  const shown = new Set((kept ?? USUAL).split(" "));
  /** @type {ReturnType<typeof import("./ways.js").offer>[]} */
  let ways = [];

  /** @param {string} word @param {boolean} on */
  const choose = (word, on) => {
    shown.delete("plain");
    shown[on ? "add" : "delete"](word);
    const words = [...shown].join(" ") || "plain";
    attempt(() => localStorage.setItem(KEPT, words));
    tellAddress(words);
    apply();
  };
  const apply = () => {
    for (const box of boxes) {
      box.checked = shown.has(box.name);
      // The degrees tell the roles by their lettering: without them there is nothing to tell.
      box.disabled = box.name === "roles" && !shown.has("degrees");
    }
    for (const way of ways) way.show(shown.has(OTHER));
  };

  for (const box of boxes) {
    box.addEventListener("change", () => choose(box.name, box.checked), listening);
  }
  apply();
  // From here the boxes tell it; until here `first-paint.js` did.
  delete document.documentElement.dataset.show;
  if (kept && boxes.length + places.length) tellAddress(kept);
  if (places.length) {
    import("./ways.js").then(({ offer }) => {
      if (listening.signal.aborted) return;
      ways = places.map((place) => offer(place, (other) => choose(OTHER, other)));
      apply();
    });
  }
  return () => {
    listening.abort();
    for (const box of boxes) Object.assign(box, { checked: true, disabled: false });
    for (const way of ways) way.remove();
  };
}

/** What the address asks for, else what was chosen before. */
function recall() {
  const asked = new URLSearchParams(location.search).get("show");
  return asked ?? attempt(() => localStorage.getItem(KEPT)) ?? null;
}

/** Does without what the device does not allow. @template T @param {() => T} act */
function attempt(act) {
  try {
    return act();
  } catch {}
}

/** @param {string} words */
function tellAddress(words) {
  const address = new URL(location.href);
  address.searchParams.set("show", words);
  history.replaceState(history.state, "", address);
}
