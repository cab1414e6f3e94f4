/**
 * The index of words has b and # for ♭ and ♯ (sitegen/pages/words_feed.py), so that both ways of
 * writing are one; what is shown has the signs again.
 */

// A letter with b or #, with a chord's suffix or nothing behind it that goes on as a word would.
const NAME = /(?<![\p{L}\d])([A-G])(b|#)(?=m|M|dim|aug|sus|add|[^\p{L}]|$)/gu;
const DEGREE = /(?<![\p{L}\d])(b|#)(?=1?\d(?!\d)|[ivIV]+(?!\p{L}))/gu;
const SIGNS = /** @type {Record<string, string>} */ ({ b: "♭", "#": "♯" });

/** Words as the index has them. @param {string} words */
export const plain = (words) => words.replaceAll("♭", "b").replaceAll("♯", "#");

/** Words as the site writes them. @param {string} words */
export const signed = (words) =>
  words
    .replace(NAME, (_, letter, sign) => letter + SIGNS[sign])
    .replace(DEGREE, (_, sign) => SIGNS[sign]);
