/**
 * A bar of drums as a table of boxes and as a line of text: each is written from the other. Arrow
 * keys move over the boxes, the space bar sets a hit.
 */

import { DRUMS, QUARTER, readPattern, stepsOf } from "./beat-reading.js";

const SHOWN = ["HH", "SD", "BD"];

/** @param {HTMLFormElement} form @param {AbortSignal} signal */
export function makeGrid(form, signal) {
  const home = /** @type {HTMLElement} */ (form.querySelector(".beat-grid"));
  const field = (/** @type {string} */ name) =>
    /** @type {HTMLInputElement} */ (form.elements.namedItem(name));

  const write = () => {
    const rows = [...home.querySelectorAll("tbody tr")].map((row) => {
      const boxes = /** @type {HTMLInputElement[]} */ ([...row.querySelectorAll("input")]);
      const signs = boxes.map((box) => (box.checked ? "x" : ".")).join("");
      return signs.includes("x") ? row.getAttribute("data-drum") + " " + signs : "";
    });
    field("beat").value = rows.filter(Boolean).join(" ");
  };
  const show = () => {
    const [meter, steps] = [field("meter").value, field("steps").value];
    const { hits } = readPattern(field("beat").value, meter, steps);
    const { step, number } = stepsOf(meter, steps);
    const drums = [...new Set([...SHOWN, ...Object.keys(hits)])];
    home.innerHTML = table(drums, hits, step, number);
  };
  /** @param {KeyboardEvent} event */
  const move = (event) => {
    const box = /** @type {HTMLElement} */ (event.target);
    const [x, y] = /** @type {Record<string, number[]>} */ ({
      ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1],
    })[event.key] ?? [0, 0];
    if (!(x || y) || !box.matches("input")) return;
    event.preventDefault();
    const rows = [...home.querySelectorAll("tbody tr")].map((row) => [...row.querySelectorAll("input")]);
    const row = rows.findIndex((boxes) => boxes.includes(/** @type {HTMLInputElement} */ (box)));
    const at = rows[row].indexOf(/** @type {HTMLInputElement} */ (box));
    const next = rows[row + y]?.[at + x];
    if (!next) return;
    box.tabIndex = -1;
    next.tabIndex = 0;
    next.focus();
  };
  home.addEventListener("change", write, { signal });
  home.addEventListener("keydown", move, { signal });
  for (const name of ["meter", "steps", "beat"]) field(name).addEventListener("change", show, { signal });
  show();
  return { show, leave: () => home.replaceChildren() };
}

/**
 * @param {string[]} drums
 * @param {Record<string, number[]>} hits
 * @param {number} step
 * @param {number} number
 */
function table(drums, hits, step, number) {
  const places = Array.from({ length: number }, (_, at) => at);
  const beat = QUARTER / step;
  const rows = drums.map((drum, row) => {
    const boxes = places.map((at) => {
      const checked = hits[drum]?.includes(at * step) ? " checked" : "";
      const stop = row || at ? ' tabindex="-1"' : "";
      const isBeat = at % beat === 0 ? ' class="on-beat"' : "";
      return `<td${isBeat}><input type="checkbox"${checked}${stop} aria-label="${DRUMS[drum]}, step ${at + 1}"></td>`;
    });
    return `<tr data-drum="${drum}"><th scope="row">${DRUMS[drum]}</th>${boxes.join("")}</tr>`;
  });
  return `<div class="beat-scroll"><table><tbody>${rows.join("")}</tbody></table></div>`;
}
