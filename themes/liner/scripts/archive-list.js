/** Write-ups that were found, as the archive's page lists them. */

import { written } from "./facet-filter.js";
import { escape, isolated } from "./names.js";

const [DRAFT, PICTURE] = [1, 2]; // as in sitegen/finding/facets_index.py

/**
 * @typedef {import("./facet-filter.js").Archive} Archive
 * @typedef {import("./facet-filter.js").Asked} Asked
 * @typedef {import("./archive-index.js").Written} Written
 */

/** One write-up. @param {Written} record @param {Archive} archive @param {number} number */
export function item([address, title, song, artist, year, signs], archive, number) {
  const page = escape(encodeURI(address));
  const picture = `<img class="record-incipit" src="${page}incipit.svg" alt="" width="192" height="112" loading="lazy" decoding="async">`;
  const named = [song && `<cite>${isolated(song)}</cite>`, isolated(artist)].filter(Boolean);
  return `<li class="record">${signs & PICTURE ? picture : ""}
<div class="record-name">${signs & DRAFT ? '<p class="stamp">Draft</p>' : ""}
<h3><a href="${page}index.html">${isolated(title)}</a></h3>
<p class="record-song">${[named.join(" by "), year || ""].filter(Boolean).join(", ")}</p></div>
<div class="record-notes"><dl class="record-facts">${facts(archive, number)}</dl></div></li>`;
}

/** @param {Archive} archive @param {number} number */
function facts(archive, number) {
  const words = (/** @type {string} */ id) => {
    const values = archive.facets.get(id)?.values ?? [];
    const own = values.filter((value) => value.numbers.includes(number));
    return own.map((value) => value.words).join(", ");
  };
  const told = [
    ["Key", words("key")],
    ["Tempo", tempo([archive.tempos[number]].flat())],
    ["Meter", words("meter")],
    ["Tuning", words("tuning")],
  ].filter(([, text]) => text);
  const rows = told.map(([name, text]) => `<dt class="unseen">${name}</dt><dd>${isolated(text)}</dd>`);
  return rows.map((row) => `<div>${row}</div>`).join("");
}

/** @param {number[]} tempos */
function tempo(tempos) {
  const [slow, fast] = [Math.min(...tempos), Math.max(...tempos)];
  if (!fast) return "";
  return slow === fast ? `${slow} bpm` : `${slow} to ${fast} bpm`;
}

/** Links to the pages before and after the one shown. @param {Asked} asked @param {number} last */
export function pageLinks(asked, last) {
  const link = (/** @type {number} */ page, /** @type {string} */ words) => {
    const address = location.pathname + written({ ...asked, page });
    return `<a href="${escape(address)}" data-page="${page}">${words}</a>`;
  };
  const newer = asked.page > 1 ? link(asked.page - 1, "Newer") : "";
  const older = asked.page < last ? link(asked.page + 1, "Older") : "";
  return [newer, older].filter(Boolean).join(" ");
}

/** @param {number} found @param {number} page @param {number} last */
export function count(found, page, last) {
  if (!found) return "No write-up has all of this.";
  const all = found === 1 ? "1 write-up" : `${found} write-ups`;
  return last > 1 ? `${all}, page ${page} of ${last}` : all;
}
