/**
 * How passages that were found are listed: as links that light their bars up (see arrival.js).
 */

import { load, top } from "./index-files.js";
import { escape, isolated } from "./names.js";

export const PART = 32; // write-ups in one file of names or lines, as in sitegen/finding/names.py

/**
 * @typedef {[anchor: string, name: string, title: string]} NamedChart
 * @typedef {[address: string, title: string, artist: string, year: number, charts: NamedChart[]]}
 *   NamedWriteUp
 * @typedef {object} Passage A place in a chart: the numbers of write-up and chart, its bars, and
 *   what there is to say of it as HTML.
 * @property {number} writeUp
 * @property {number} chart
 * @property {number[]} bars
 * @property {string} note
 */

/** The answer to what cannot be asked. @param {string} said why not */
export const nothing = (said) => ({ said, understood: false, count: 0, passages: async () => [] });

/** @param {number} writeUp @returns {Promise<NamedWriteUp>} */
async function nameOf(writeUp) {
  const part = await load(`names-${Math.floor(writeUp / PART)}.json`);
  return part[writeUp % PART];
}

/** "bar 3", "bars 3 to 5", "bars 2, 3 and 7". @param {number[]} bars */
export function sayBars(bars) {
  const all = [...new Set(bars)].sort((one, other) => one - other);
  const [first, last] = [all[0], all[all.length - 1]];
  if (all.length < 2) return `bar ${first}`;
  if (all.length > 2 && last - first === all.length - 1) return `bars ${first} to ${last}`;
  return `bars ${all.slice(0, -1).join(", ")} and ${last}`;
}

/** The items of a list of passages, as HTML. @param {Passage[]} passages */
export async function listed(passages) {
  const named = await Promise.all(passages.map(({ writeUp }) => nameOf(writeUp)));
  return passages.map((passage, n) => item(passage, named[n])).join("");
}

/** @param {Passage} passage @param {NamedWriteUp} named */
function item({ chart, bars, note }, [address, title, artist, year, charts]) {
  const [anchor, name, caption] = charts[chart];
  const query = bars.length ? `?bars=${[...new Set(bars)].join("+")}` : "";
  const href = `${top()}${encodeURI(address)}index.html${query}#${anchor}`;
  const song = [isolated(artist), year || ""].filter(Boolean).join(", ");
  const place = [name, bars.length ? sayBars(bars) : ""].filter(Boolean).join(", ");
  return `<li><p class="found-place"><a href="${escape(href)}"><b>${isolated(title)}</b>, ${escape(place)}</a></p>
<p class="found-song">${[song, isolated(caption)].filter(Boolean).join(" · ")}</p>${note}</li>`;
}
