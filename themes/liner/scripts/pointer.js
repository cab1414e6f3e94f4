/** Marks places in a chart: a bracket around bars, a ring around notes. */

// In the units of a drawing, of which a staff space has 180: how far marks keep off what they
// mark, and how far bars of one line may lie apart.
const [OFF, APART] = [70, 400];

/** @typedef {{ x: number, y: number, right: number, bottom: number }} Box */

/**
 * Takes away the marks of a chart and sets others; returns the first of them.
 *
 * @param {HTMLElement} figure
 * @param {DOMStringMap} places the numbers of bars and the ids of notes
 */
export function markBars(figure, { bars = "", notes = "" }) {
  figure.querySelectorAll(".pointer").forEach((node) => node.remove());
  const numbers = bars.split(" ");
  for (const bar of figure.querySelectorAll(".changes-bar")) {
    const number = bar.querySelector(".changes-number")?.textContent?.match(/\d+/)?.[0] ?? "";
    bar.toggleAttribute("data-pointed", numbers.includes(number));
  }
  for (const svg of bars ? figure.querySelectorAll(".drawing > svg.notation") : []) {
    if (svg.getClientRects().length) draw(svg, numbers, notes.split(" "));
  }
  return figure.querySelector(".pointer, [data-pointed]");
}

/** @param {Element} svg @param {string[]} bars @param {string[]} notes */
function draw(svg, bars, notes) {
  const prefix = svg.querySelector("title")?.id.replace(/title$/, "");
  const find = (/** @type {string} */ names) => [...svg.querySelectorAll(names)];
  /** The heads of the first of these that is drawn. @param {string[]} ids */
  const heads = (...ids) => {
    const found = ids.map((id) => find(`[id="${prefix}${id}"] :is(use[href^="#g-E0"], text)`));
    return found.find(([head]) => head) ?? [];
  };
  /** @type {Box[]} */
  const lines = [];
  for (const bar of bars) {
    // A bar that a repeat cuts in two has two parts.
    for (const part of find(`[id="${prefix}bar-${bar}"], [id^="${prefix}bar-${bar}-"]`)) {
      const box = around([...part.querySelectorAll("path, use")].map(boxOf));
      const last = lines.at(-1);
      const isNext = last && box.x > last.x && box.x < last.right + APART;
      if (isNext) lines.splice(-1, 1, around([last, box]));
      else lines.push(box);
    }
  }
  const marks = lines.map(
    ({ x, y, right, bottom }) =>
      `<path d="M${x} ${bottom + OFF}V${y - OFF}H${right}V${bottom + OFF}"/>`,
  );
  for (const note of notes) {
    const [event, place = 1] = note.split(/-n(?=\d+$)/);
    const found = [...heads(note, event), ...heads(`${event}-tab-n${place}`, `${event}-tab`)];
    for (const { x, y, right, bottom } of found.map(boxOf)) {
      const [rx, ry] = [(right - x) / 2, (bottom - y) / 2];
      const place = `cx="${x + rx}" cy="${y + ry}"`;
      marks.push(`<ellipse ${place} rx="${rx + OFF}" ry="${ry + OFF}"/>`);
    }
  }
  const group = `<g class="pointer">${marks.join("")}</g>`;
  svg.querySelector("desc")?.insertAdjacentHTML("afterend", group);
}

/** @param {Element} node @returns {Box} */
function boxOf(node) {
  const { x, y, width, height } = /** @type {SVGGraphicsElement} */ (node).getBBox();
  return { x, y, right: x + width, bottom: y + height };
}

/** @param {Box[]} boxes @returns {Box} */
function around(boxes) {
  return {
    x: Math.min(...boxes.map((box) => box.x)),
    y: Math.min(...boxes.map((box) => box.y)),
    right: Math.max(...boxes.map((box) => box.right)),
    bottom: Math.max(...boxes.map((box) => box.bottom)),
  };
}
