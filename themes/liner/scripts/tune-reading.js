/** Tunes as a reader types them: names of notes, degrees of the key, or a contour. */

/**
 * @typedef {import("./tune-search.js").Question} Question
 * @typedef {object} Read
 * @property {Question} [question]
 * @property {number[]} [signs] of a contour
 * @property {string} [unread]
 */

const LETTERS = /** @type {Record<string, number>} */ ({ C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 });
const SCALE = [0, 2, 4, 5, 7, 9, 11];
const NOTE = /^([A-Ga-g])(bb|##|[b#♭♯]?)(-?\d)?$/u;
const DEGREE = /^(bb|##|[b#♭♯]?)([1-7])$/u;
const SIGNS = /** @type {Record<string, number>} */ ({
  up: 1, u: 1, "+": 1, "/": 1, "↗": 1, higher: 1,
  down: -1, d: -1, "-": -1, "\\": -1, "↘": -1, lower: -1,
  same: 0, s: 0, "=": 0, "→": 0, r: 0,
});
const ALTERATIONS = /** @type {Record<string, number>} */ ({ b: -1, "♭": -1, "#": 1, "♯": 1 });

/** @param {string} signs */
const shift = (signs) => [...signs].reduce((sum, sign) => sum + ALTERATIONS[sign], 0);

/**
 * Reads notes with or without octaves (which count where all have one), degrees, or ups and downs.
 *
 * @param {string} text
 * @returns {Read}
 */
export function read(text) {
  const words = text.trim().split(/[\s,|]+/).filter(Boolean);
  const small = words.map((word) => word.toLowerCase());
  if (words.length && small.every((word) => word in SIGNS)) return { signs: small.map((word) => SIGNS[word]) };
  const contour = words.length === 1 ? [...small[0]] : [];
  if (contour.length > 2 && contour.every((sign) => "uds+-=".includes(sign))) {
    return { signs: contour.map((sign) => SIGNS[sign]) };
  }
  if (words.length && words.every((word) => DEGREE.test(word))) {
    const notes = words.map((word) => {
      const [, signs, degree] = /** @type {RegExpMatchArray} */ (word.match(DEGREE));
      return (SCALE[Number(degree) - 1] + shift(signs) + 12) % 12;
    });
    return { question: { notes, octaves: false, degrees: true } };
  }
  const parts = words.map((word) => word.match(NOTE));
  const wrong = parts.findIndex((part) => !part);
  if (wrong >= 0) return { unread: words[wrong] };
  const octaves = parts.length > 0 && parts.every((part) => part?.[3] !== undefined);
  const notes = parts.map((part) => {
    const [, letter, signs, octave] = /** @type {RegExpMatchArray} */ (part);
    const pitch = LETTERS[letter.toUpperCase()] + shift(signs);
    return octaves ? pitch + 12 * (Number(octave) + 1) : (pitch + 12) % 12;
  });
  return { question: { notes, octaves, degrees: false } };
}
