/**
 * Words looked up in the full-text index, which is loaded when it is first asked. Each result has
 * the passages where the words stand, and leads to their section or chart.
 */

import { plain, signed } from "./accidentals.js";
import { once, top } from "./index-files.js";
import { escape, isolated } from "./names.js";

const AT_ONCE = 8;
// Words of English that stand in every text: the index tells for each of them every place where it
// stands, which is much to load for nothing. A and I are no such words here: they are a note and a
// degree.
const EVERYWHERE = new Set("the and of to in is it at on for with by as that this was are be from or".split(" "));

/**
 * @typedef {{ url: string, title: string, excerpt: string }} Part a section with its excerpt
 * @typedef {{ raw_url: string, meta: { title: string }, excerpt: string, sub_results: Part[] }} Text
 * @typedef {{ id: string, score: number, data: () => Promise<Text> }} Found
 */

/** The index, which answers `search(words)`. */
const open = once(async () => {
  const module = await import(`${new URL(top(), location.href)}words/pagefind.js`);
  await module.options({ excerptLength: 24 });
  return module;
});

/**
 * Write-ups with some words, however their flats and sharps are written, the best first.
 *
 * @param {string} words
 * @returns {Promise<Found[]>}
 */
export const search = async (words) => (await (await open()).search(telling(plain(words)))).results;

/**
 * Words without those that tell nothing; words in quotation marks stand side by side and all count.
 *
 * @param {string} words
 */
function telling(words) {
  if (words.includes('"') || !document.documentElement.lang.startsWith("en")) return words;
  const left = words.split(/\s+/).filter((word) => !EVERYWHERE.has(word.toLowerCase()));
  return left.length ? left.join(" ") : words;
}

/** @param {Document | Element} root */
export function enhance(root) {
  const form = /** @type {HTMLFormElement | null} */ (root.querySelector("#words_form"));
  if (!form) return () => {};
  const section = /** @type {Element} */ (form.parentElement);
  const field = /** @type {HTMLInputElement} */ (form.elements.namedItem("words"));
  const said = /** @type {Element} */ (section.querySelector(".finder-said"));
  const list = /** @type {Element} */ (section.querySelector(".found"));
  const more = /** @type {HTMLElement} */ (section.querySelector(".finder-more"));
  const listening = new AbortController();
  /** @type {Found[]} */
  let found = [];
  let shown = 0;
  let asked = 0;

  const showMore = async () => {
    const turn = asked;
    const next = found.slice(shown, shown + AT_ONCE);
    const texts = await Promise.all(next.map((one) => one.data()));
    if (turn !== asked) return;
    list.insertAdjacentHTML("beforeend", texts.map(item).join(""));
    shown += next.length;
    more.hidden = shown >= found.length;
  };
  /** @param {string} words */
  const ask = async (words) => {
    const turn = ++asked;
    if (!words) {
      found = [];
      [list.innerHTML, said.textContent, more.hidden] = ["", "", true];
      return;
    }
    try {
      const results = await search(words);
      if (turn !== asked) return;
      [found, shown, list.innerHTML] = [results, 0, ""];
      await showMore();
      if (turn === asked) said.textContent = count(found.length);
    } catch {
      if (turn === asked) said.textContent = "The index of words cannot be loaded here.";
    }
  };
  const recall = () => {
    const words = new URLSearchParams(location.search).get("words") ?? "";
    field.value = words;
    ask(words);
  };

  form.hidden = false;
  form.addEventListener(
    "submit",
    (event) => {
      event.preventDefault();
      const words = field.value.trim();
      const address = new URL(location.href);
      address.search = words ? `${new URLSearchParams({ words })}` : "";
      address.hash = "find_words";
      if (address.href !== location.href) history.pushState(null, "", address);
      ask(words);
    },
    listening,
  );
  more.addEventListener("click", showMore, listening);
  addEventListener("popstate", recall, listening);
  recall();
  return () => {
    listening.abort();
    form.hidden = more.hidden = true;
    ask("");
  };
}

/** @param {number} number */
const count = (number) => {
  if (!number) return "Nothing has these words.";
  return number === 1 ? "One text has these words." : number + " texts have these words.";
};

/** @param {Text} text */
function item({ raw_url, meta, excerpt, sub_results }) {
  const page = top() + raw_url.replace(/^\//, "") + "index.html";
  const places = sub_results.filter(({ url }) => url.includes("#")).slice(0, 3);
  const parts = places.map((part) => {
    const href = page + part.url.slice(part.url.indexOf("#"));
    return `<li>${link(href, part.title)}${words(part.excerpt)}</li>`;
  });
  const below = parts.length ? `<ul class="found-parts">${parts.join("")}</ul>` : words(excerpt);
  return `<li><p class="found-place"><b>${link(page, meta.title)}</b></p>${below}</li>`;
}

/** @param {string} href @param {string} text */
const link = (href, text) => `<a href="${escape(href)}">${isolated(signed(text))}</a>`;

/** An excerpt, which is HTML whose only elements are marks. @param {string} excerpt */
const words = (excerpt) => `<p class="found-words" dir="auto">${signed(excerpt)}</p>`;
