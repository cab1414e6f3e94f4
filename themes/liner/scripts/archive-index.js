/** The archive's index files: each is loaded once, when something is first asked of it. */

import { folded, readFacet } from "./facet-filter.js";
import { load, once } from "./index-files.js";

const RECORDS = 32; // write-ups in one file, as in sitegen/finding/facets_index.py

/**
 * @typedef {import("./facet-filter.js").Archive} Archive
 * @typedef {[address: string, title: string, song: string, artist: string, year: number,
 *   signs: number]} Written a write-up as its record has it
 */

/** @type {() => Promise<Archive>} */
const opened = once(async () => {
  const { count, tempos, facets } = await load("facets.json");
  return { count, tempos, facets: new Map(facets.map(readFacet).map((/** @type {any} */ one) => [one.id, one])) };
});

/**
 * The archive with the facets of few values, and of those with many where one of `ids` is among
 * them; a failed request may be tried again.
 *
 * @param {string[]} ids
 */
export async function open(ids) {
  const archive = await opened();
  if (ids.some((id) => !archive.facets.has(id))) {
    for (const filed of await load("facets-names.json")) {
      archive.facets.set(filed[0], { ...readFacet(filed), isLong: true });
    }
  }
  return archive;
}

/** The titles of all write-ups, folded. @type {() => Promise<string[]>} */
export const openTitles = once(async () => (await load("titles.json")).map(folded));

/** The record of a write-up. @param {number} number @returns {Promise<Written>} */
export const record = async (number) =>
  (await load(`records-${Math.floor(number / RECORDS)}.json`))[number % RECORDS];
