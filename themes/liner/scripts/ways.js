/** A chart seen two ways: as it sounds, and by the names of its players. */

/**
 * Puts a choice between the two ways in the place of the link to the other one.
 *
 * @param {Element} place
 * @param {(other: boolean) => void} choose
 */
export function offer(place, choose) {
  const figure = /** @type {HTMLElement} */ (place.closest("figure"));
  const link = /** @type {HTMLAnchorElement} */ (place.querySelector("a"));
  const before = [...place.childNodes];
  const sounding = [...figure.querySelectorAll(":is(.drawing-wide, .drawing-narrow) > svg")];
  let drawn = sounding;
  /** @type {Promise<Element[]> | undefined} */
  let fetched;
  let wanted = false;

  place.innerHTML = `<fieldset><legend class="unseen">Names and staff</legend>
    <label><input type="radio">as it sounds</label>
    <label><input type="radio">${link.dataset.way}</label></fieldset><p></p>`;
  const told = /** @type {HTMLElement} */ (place.lastElementChild);
  const buttons = [...place.querySelectorAll("input")];
  buttons.forEach((button, n) => {
    button.name = `${figure.id}-way`;
    button.onchange = () => choose(n > 0);
    // Of all charts that change, only the one where the reader is speaks up.
    button.onfocus = () => (told.role = "status");
    button.onblur = () => (told.role = null);
  });

  /** @param {Element[]} next @param {(string | Node)[]} words */
  const swap = (next, ...words) => {
    told.replaceChildren(...words);
    if (next === drawn) return;
    drawn.forEach((svg, n) => put(next[n], svg));
    drawn = next;
    figure.dispatchEvent(new Event("redrawn"));
  };

  return {
    /** @param {boolean} other */
    async show(other) {
      wanted = other;
      buttons[Number(other)].checked = true;
      if (!other) return swap(sounding, drawn === sounding ? "" : "Shown as it sounds.");
      try {
        fetched ??= Promise.all([link.href, link.dataset.narrow ?? ""].map(fetchDrawing));
        const next = await fetched;
        if (wanted) swap(next, `${link.dataset.told} All words keep the names that sound.`);
      } catch {
        fetched = undefined;
        buttons[0].checked = true;
        swap(sounding, "It could not be fetched; the chart stays as it sounds. By itself: ", link);
      }
    },

    remove() {
      wanted = false;
      swap(sounding);
      place.replaceChildren(...before);
    },
  };
}

/** Puts a drawing in the place of another, which takes its size. @param {Element[]} drawings */
function put(...[next, svg]) {
  const { style, viewBox } = /** @type {SVGSVGElement} */ (next);
  const { width, height } = viewBox.baseVal;
  const place = /** @type {HTMLElement} */ (svg.parentElement).style;
  place.setProperty("--natural-width", style.maxWidth);
  place.setProperty("--rise", `${height / width}`);
  svg.replaceWith(next);
}

/** Returns the drawing in a file; its glyphs go to those that the page has already. */
async function fetchDrawing(/** @type {string} */ address) {
  const answer = await fetch(address);
  const file = new DOMParser().parseFromString(await answer.text(), "image/svg+xml");
  const svg = file.documentElement;
  if (!svg.matches(".notation")) throw new Error("no drawing");
  for (const glyph of svg.querySelectorAll("defs > *")) {
    if (!document.getElementById(glyph.id)) document.querySelector("body > svg defs")?.append(glyph);
  }
  svg.querySelectorAll("style, defs").forEach((node) => node.remove());
  return svg;
}
