/**
 * What searches share: index files are loaded once, when they are first needed, and passages are
 * listed with links that light their bars up (see arrival.js).
 */

const PART = 128; // write-ups in one file of names, as in sitegen/finding/names.py

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

/** @type {Map<string, Promise<any>>} */
const loaded = new Map();

/** Where the index files lie; the top of the site is above it. */
export const shelf = () =>
  /** @type {HTMLElement} */ (document.querySelector("[data-shelf]")).dataset.shelf ?? "";
export const top = () => shelf().replace(/shelf\/$/, "");

/**
 * The contents of an index file, asked for once; a failed request may be tried again.
 *
 * @param {string} name
 * @returns {Promise<any>}
 */
export function load(name) {
  const known = loaded.get(name);
  if (known) return known;
  const asked = fetch(shelf() + name).then((answer) => {
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    return answer.json();
  });
  asked.catch(() => loaded.delete(name));
  loaded.set(name, asked);
  return asked;
}

/** @param {number} writeUp @returns {Promise<NamedWriteUp>} */
export async function nameOf(writeUp) {
  const part = await load(`names-${Math.floor(writeUp / PART)}.json`);
  return part[writeUp % PART];
}

/** @param {string} text */
export const escape = (text) =>
  text.replace(/[&<>"]/g, (sign) => `&#${/** @type {number} */ (sign.codePointAt(0))};`);

/** "bar 3", "bars 3 to 5", "bars 2, 3 and 7". @param {number[]} bars */
export function sayBars(bars) {
  const all = [...new Set(bars)].sort((one, other) => one - other);
  const [first, last] = [all[0], all[all.length - 1]];
  if (all.length < 2) return `bar ${first}`;
  if (all.length > 2 && last - first === all.length - 1) return `bars ${first} to ${last}`;
  return `bars ${all.slice(0, -1).join(", ")} and ${last}`;
}

/**
 * Lists passages as links to their bars.
 *
 * @param {Element} list an <ol>
 * @param {Passage[]} passages
 */
export async function showPassages(list, passages) {
  const named = await Promise.all(passages.map(({ writeUp }) => nameOf(writeUp)));
  list.innerHTML = passages.map((passage, n) => item(passage, named[n])).join("");
}

/** @param {Passage} passage @param {NamedWriteUp} named */
function item({ chart, bars, note }, [address, title, artist, year, charts]) {
  const [anchor, name, caption] = charts[chart];
  const query = bars.length ? `?bars=${[...new Set(bars)].join("+")}` : "";
  const href = `${top()}${encodeURI(address)}index.html${query}#${anchor}`;
  const song = [artist, year || ""].filter(Boolean).join(", ");
  const place = [name, bars.length ? sayBars(bars) : ""].filter(Boolean).join(", ");
  return `<li><p class="found-place"><a href="${escape(href)}"><b>${escape(title)}</b>, ${escape(place)}</a></p>
<p class="found-song">${escape([song, caption].filter(Boolean).join(" · "))}</p>${note}</li>`;
}
