/**
 * Which write-ups have what was chosen, and how many each other value would leave. Of one facet
 * any of the chosen values will do, of different facets all must be there. Nothing here knows of
 * the page.
 */

import { plain } from "./accidentals.js";

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const BITS = 5;
const MORE = 32;
const TEMPO = "tempo";

/**
 * @typedef {object} Value one that write-ups are filed under
 * @property {string} address
 * @property {string} words
 * @property {number[]} numbers of its write-ups, rising
 * @typedef {{ id: string, name: string, values: Value[], isLong?: boolean }} Facet
 * @typedef {[id: string, name: string, words: string[], addresses: string[], numbers: string]}
 *   FiledFacet as the index has it (sitegen/finding/facets_index.py)
 * @typedef {object} Archive
 * @property {number} count
 * @property {Array<number | number[]>} tempos of each write-up; 0 for none
 * @property {Map<string, Facet>} facets
 * @typedef {object} Asked
 * @property {Map<string, Set<string>>} chosen addresses of values by facet
 * @property {[from: number | null, to: number | null]} tempo whole beats a minute
 * @property {string} words
 * @property {number} page from 1
 */

/** Rising numbers as the index packs them. @param {string} text */
export function unpack(text) {
  /** @type {number[]} */
  const numbers = [];
  let before = -1;
  let distance = 0;
  let shift = 0;
  for (const sign of text) {
    const digit = DIGITS.indexOf(sign);
    distance += (digit % MORE) << shift;
    shift += BITS;
    if (digit >= MORE) continue;
    numbers.push((before += distance + 1));
    distance = shift = 0;
  }
  return numbers;
}

/** @param {FiledFacet} filed @returns {Facet} */
export function readFacet([id, name, words, addresses, packed]) {
  const numbers = packed.split(" ");
  const values = words.map((said, n) => ({
    words: said,
    address: addresses[n] || said.toLowerCase().replaceAll(" ", "-"),
    numbers: unpack(numbers[n]),
  }));
  return { id, name, values };
}

/**
 * The write-ups that have all that is asked for, and for each facet how many each of its values
 * would leave beside what is chosen of the other facets.
 *
 * @param {Archive} archive
 * @param {Asked} asked
 * @param {number[] | null} titled the write-ups whose titles have the words; null without words
 */
export function filter(archive, asked, titled) {
  const misses = new Uint8Array(archive.count);
  /** @type {Map<string, Uint8Array>} */
  const kept = new Map();
  /** @param {string} name @param {Iterable<number>} numbers */
  const keep = (name, numbers) => {
    const has = new Uint8Array(archive.count);
    for (const number of numbers) has[number] = 1;
    has.forEach((one, number) => (misses[number] += 1 - one));
    kept.set(name, has);
  };
  if (titled) keep("", titled);
  if (asked.tempo.some((end) => end !== null)) keep(TEMPO, inTempo(archive.tempos, asked.tempo));
  for (const [id, addresses] of asked.chosen) {
    const values = archive.facets.get(id)?.values ?? [];
    keep(id, values.flatMap((one) => (addresses.has(one.address) ? one.numbers : [])));
  }
  /** @type {number[]} */
  const found = [];
  misses.forEach((missed, number) => missed || found.push(number));
  /** @param {string} id */
  const counts = (id) => {
    const own = kept.get(id);
    /** @param {number} number */
    const fits = (number) => misses[number] === (own ? 1 - own[number] : 0);
    const values = archive.facets.get(id)?.values ?? [];
    return values.map(({ numbers }) => numbers.reduce((sum, one) => sum + Number(fits(one)), 0));
  };
  return { found, counts };
}

/**
 * @param {Archive["tempos"]} tempos
 * @param {Asked["tempo"]} range
 */
function inTempo(tempos, [from, to]) {
  const fits = (/** @type {number} */ tempo) =>
    tempo > 0 && Math.floor(tempo) >= (from ?? 0) && Math.floor(tempo) <= (to ?? Infinity);
  return tempos.flatMap((one, number) => ([one].flat().some(fits) ? [number] : []));
}

/** Words without capitals and accents, their flats and sharps as they are typed. @param {string} text */
export const folded = (text) =>
  plain(text).normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/**
 * The numbers of the titles that have all of some words.
 *
 * @param {string[]} titles folded
 * @param {string} words
 */
export function withWords(titles, words) {
  const all = folded(words).split(/\s+/).filter(Boolean);
  return titles.flatMap((title, n) => (all.every((word) => title.includes(word)) ? [n] : []));
}

/** What an address asks for. @param {string} search @param {Iterable<string>} ids of all facets @returns {Asked} */
export function read(search, ids) {
  const given = new URLSearchParams(search);
  /** @type {Asked["chosen"]} */
  const chosen = new Map();
  for (const id of ids) {
    const values = given.getAll(id).filter(Boolean);
    if (values.length && id !== TEMPO) chosen.set(id, new Set(values));
  }
  const [, from = "", to = ""] = /^(\d{0,3})\.\.(\d{0,3})$/.exec(given.get(TEMPO) ?? "") ?? [];
  const number = (/** @type {string} */ text) => (text ? Number(text) : null);
  const page = Math.max(1, Math.floor(Number(given.get("page"))) || 1);
  return { chosen, tempo: [number(from), number(to)], words: given.get("words")?.trim() ?? "", page };
}

/** The same as an address has it, "" for nothing. @param {Asked} asked */
export function written({ chosen, tempo, words, page }) {
  const given = new URLSearchParams();
  for (const [id, values] of chosen) for (const value of values) given.append(id, value);
  if (tempo.some((end) => end !== null)) given.set(TEMPO, tempo.map((end) => end ?? "").join(".."));
  if (words) given.set("words", words);
  if (page > 1) given.set("page", String(page));
  const text = String(given);
  return text ? `?${text}` : "";
}
