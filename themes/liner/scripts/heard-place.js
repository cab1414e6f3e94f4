/** Marks what is heard of the recording: in the form plan, and in the list of moments. */

/**
 * @param {Document} root
 * @param {HTMLElement} now names what is heard; it is not read out by itself
 * @returns {(time: number) => void} is told the seconds, or NaN when nothing is heard any more
 */
export function makeMarker(root, now) {
  const sections = /** @type {HTMLElement[]} */ ([...root.querySelectorAll("[data-start]")]);
  const moments = inOrder(root, ".tracks [data-seconds]");
  const charts = inOrder(root, ".chart-moment[data-seconds]");
  /** @type {Element[]} */
  let marked = [];
  let told = "";

  /**
   * @param {string} section
   * @param {Element | null | undefined} chart the one that was reached last
   */
  function name(section, chart) {
    if (told === (told = `${section} ${chart?.id}`)) return;
    now.textContent = section;
    if (!chart) return;
    const link = document.createElement("a");
    link.href = `#${chart.id}`;
    link.textContent = chart.querySelector(".chart-number")?.textContent ?? "";
    now.append(section ? ", see " : "See ", link);
  }

  return (time) => {
    const heard = sections.filter(
      ({ dataset }) => Number(dataset.start) <= time && time < Number(dataset.end),
    );
    const moment = latest(moments, time)?.closest("li");
    for (const element of marked) mark(element, false);
    marked = moment ? [...heard, moment] : heard;
    for (const element of marked) mark(element, true);
    const row = heard.find(({ localName }) => localName === "tr");
    const section = row?.querySelector("th")?.firstChild?.textContent ?? "";
    name(section, latest(charts, time)?.closest("figure"));
  };
}

/**
 * @param {Document} root
 * @param {string} selector
 */
function inOrder(root, selector) {
  const links = /** @type {HTMLElement[]} */ ([...root.querySelectorAll(selector)]);
  return links.sort((one, other) => Number(one.dataset.seconds) - Number(other.dataset.seconds));
}

/**
 * @param {HTMLElement[]} links
 * @param {number} time
 */
const latest = (links, time) => links.findLast(({ dataset }) => Number(dataset.seconds) <= time);

/**
 * The drawn plan's links say with `aria-current` what is being read.
 * @param {Element} element
 * @param {boolean} on
 */
function mark(element, on) {
  if (element instanceof SVGElement) element.toggleAttribute("data-heard", on);
  else if (on) element.setAttribute("aria-current", "time");
  else element.removeAttribute("aria-current");
}
