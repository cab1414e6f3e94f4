/** The values of the archive's index as buttons, and what is chosen of them. */

import { escape, isolated } from "./names.js";

const [FEW, MANY] = [16, 48]; // values of a facet, as in sitegen/site/archive_pages.py

/**
 * @typedef {import("./facet-filter.js").Archive} Archive
 * @typedef {import("./facet-filter.js").Asked} Asked
 * @typedef {import("./facet-filter.js").Facet} Facet
 */

/** A list of links to values as a list of buttons. @param {string} html */
export function pressable(html) {
  const list = document.createElement("ul");
  list.innerHTML = html;
  for (const link of list.querySelectorAll("li:not(.facet-rest) > a")) {
    const [id, address] = (link.getAttribute("href") ?? "").split("/").slice(1);
    const count = Number(link.nextElementSibling?.textContent);
    const item = /** @type {Element} */ (link.parentElement);
    item.outerHTML = button(id, { address, words: link.textContent ?? "", count, pressed: false });
  }
  return list.innerHTML;
}

/**
 * The values of a facet that would leave something, the commonest where they are very many.
 *
 * @param {Facet} facet
 * @param {number[]} counts
 * @param {Asked} asked
 * @param {string} rest the list's last item, which leads to all values
 */
export function buttons(facet, counts, asked, rest) {
  const most = facet.isLong ? FEW : MANY;
  const values = facet.values
    .map(({ address, words }, n) => ({ address, words, count: counts[n], pressed: false }))
    .map((value) => ({ ...value, pressed: isPressed(facet.id, value, asked) }))
    .filter(({ count, pressed }) => count || pressed);
  const often = [...values].sort((one, other) => other.count - one.count).slice(0, most);
  const kept = new Set(often);
  const shown = values.filter((value) => value.pressed || kept.has(value));
  if (!shown.length) return `<li class="facet-none">none</li>`;
  const all = shown.map((value) => button(facet.id, value)).join("");
  return shown.length < values.length ? all + rest : all;
}

/**
 * @param {string} id
 * @param {{ address: string, words: string }} value
 * @param {Asked} asked
 */
function isPressed(id, { address, words }, asked) {
  if (id !== "tempo") return !!asked.chosen.get(id)?.has(address);
  return range(words) === asked.tempo.map((end) => end ?? "").join("..");
}

/**
 * @param {string} id of the facet
 * @param {{ address: string, words: string, count: number, pressed: boolean }} value
 */
function button(id, { address, words, count, pressed }) {
  const value = escape(id === "tempo" ? range(words) : address);
  return `<li><button type="button" aria-pressed="${pressed}" data-facet="${id}" data-value="${value}">${isolated(words)}</button> <span class="facet-count">${count}</span></li>`;
}

/** What is chosen, as buttons that leave it out again. @param {Archive} archive @param {Asked} asked */
export function chosen(archive, asked) {
  const found = [...asked.chosen].flatMap(([id, addresses]) =>
    [...addresses].map((address) => {
      const values = archive.facets.get(id)?.values ?? [];
      const known = values.find((value) => value.address === address);
      return leaving(id, address, known?.words ?? address);
    }),
  );
  const tempo = sayTempo(asked.tempo);
  if (tempo) found.push(leaving("tempo", "", tempo));
  if (asked.words) found.push(leaving("words", "", `“${asked.words}”`));
  return `${found.join("")}<li><button type="button" data-leave="all">All write-ups</button></li>`;
}

/** @param {string} id @param {string} address @param {string} words */
const leaving = (id, address, words) =>
  `<li><button type="button" data-leave="one" data-facet="${id}" data-value="${escape(address)}"><span class="unseen">Leave out </span>${isolated(words)}<span aria-hidden="true"> ×</span></button></li>`;

/** A band of tempo as a range: "under 50", "90 to 109", "170 and faster". @param {string} words */
function range(words) {
  const [first = "", second = ""] = words.match(/\d+/g) ?? [];
  return words.startsWith("under") ? `..${Number(first) - 1}` : `${first}..${second}`;
}

/** @param {Asked["tempo"]} tempo */
function sayTempo([from, to]) {
  if (from === null) return to === null ? "" : `up to ${to} bpm`;
  return to === null ? `from ${from} bpm` : `${from} to ${to} bpm`;
}
