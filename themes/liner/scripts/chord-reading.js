/**
 * Chords as a reader types them, in letters or in numerals, read by the tables that
 * sitegen/finding/chord_readings.py makes: nothing is known here of what a suffix means.
 */

import { mod } from "./columns.js";

/**
 * @typedef {object} Readings
 * @property {[notes: string, family: string][]} kinds
 * @property {Record<string, number>} suffixes
 * @property {Record<string, number>} numerals
 * @typedef {object} Asked A chord that is looked for: its root counted from C, or from the tonic.
 * @property {string} written
 * @property {number} root
 * @property {string} notes
 * @property {string} family
 * @typedef {object} Question
 * @property {Asked[]} chords equal neighbours as one
 * @property {boolean} numerals roots count from the tonic
 * @property {string} unread what could not be read, "" where all could
 */

const LETTERS = /** @type {Record<string, number>} */ ({ C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 });
const DEGREES = ["I", "II", "III", "IV", "V", "VI", "VII"];
const SCALE = [0, 2, 4, 5, 7, 9, 11];
const ACCIDENTALS = /** @type {Record<string, number>} */ ({ b: -1, "#": 1, "𝄫": -2, "𝄪": 2, x: 2 });
const NOTE = /^([A-G])(bb|##|[b#x𝄫𝄪]?)(.*)$/u;
const NUMERAL = /^([b#]*)(sub)?(VII|VI|IV|V|III|II|I|vii|vi|iv|v|iii|ii|i)(.*)$/;
const DEGREE_IN_BASS = /^(.*)\/([b#]*)([1-7])$/;
const TRITONE = 6;
const BETWEEN = /[\s,|]+|\s*[-–—→]\s+|\s+[-–—→]\s*/u;

/** Signs as the tables have them. @param {string} text */
const plain = (text) =>
  text
    .replaceAll("♭", "b")
    .replaceAll("♯", "#")
    .replace(/[−–‐‑—]/gu, "-")
    .replace(/[º˚]/gu, "°")
    .replace(/[∆△]/gu, "Δ")
    .replace(/[Ø∅]/gu, "ø");

/** @param {string} signs */
const shift = (signs) => [...signs].reduce((sum, sign) => sum + ACCIDENTALS[sign], 0);

/**
 * @param {string} text
 * @param {Readings} readings
 * @returns {Question}
 */
export function read(text, readings) {
  const words = text.split(BETWEEN).filter((word) => word && !/^(%|N\.?C\.?)$/.test(word));
  const numerals = words.length > 0 && NUMERAL.test(plain(words[0]));
  /** @type {Asked[]} */
  const chords = [];
  for (const word of words) {
    const chord = numerals ? readNumeral(word, readings) : readSymbol(word, readings);
    if (!chord) return { chords: [], numerals, unread: word };
    const last = chords.at(-1);
    if (last?.root !== chord.root || last.notes !== chord.notes) chords.push(chord);
  }
  return { chords, numerals, unread: "" };
}

/** @param {string} written @param {Readings} readings @returns {Asked | undefined} */
export function readSymbol(written, readings) {
  const [, letter, signs, rest] = plain(written).match(NOTE) ?? [];
  if (!letter) return undefined;
  const root = mod(LETTERS[letter] + shift(signs));
  const own = find(rest, readings.suffixes, readings);
  if (own) return { written, root, ...own };
  const slash = rest.lastIndexOf("/");
  const [, bassLetter, bassSigns, more] = rest.slice(slash + 1).match(NOTE) ?? [];
  const over = slash < 0 ? undefined : find(rest.slice(0, slash), readings.suffixes, readings);
  if (!over || !bassLetter || more) return undefined;
  const bass = mod(LETTERS[bassLetter] + shift(bassSigns) - root);
  const notes = bass ? `${over.notes}/${bass.toString(16)}` : over.notes;
  return { written, root, notes, family: over.family };
}

/** @param {string} written @param {Readings} readings @returns {Asked | undefined} */
export function readNumeral(written, readings) {
  const own = readRooted(written, readings);
  if (own) return own;
  const [, over, signs, degree] = plain(written).match(DEGREE_IN_BASS) ?? [];
  const chord = over ? readNumeral(over, readings) : undefined;
  if (!chord || chord.notes.includes("/")) return undefined;
  const bass = mod(SCALE[Number(degree) - 1] + shift(signs) - chord.root);
  return { ...chord, written, notes: bass ? `${chord.notes}/${bass.toString(16)}` : chord.notes };
}

/** @param {string} written @param {Readings} readings @returns {Asked | undefined} */
function readRooted(written, readings) {
  const [, signs, sub, numeral, rest] = plain(written).match(NUMERAL) ?? [];
  if (!numeral) return undefined;
  const isSmall = numeral !== numeral.toUpperCase();
  const degree = SCALE[DEGREES.indexOf(numeral.toUpperCase())] + shift(signs);
  const root = mod(sub ? degree + TRITONE : degree);
  const own = findNumeral(isSmall, rest, readings);
  if (own) return { written, root, ...own };
  // V7/ii: the chord as it stands in the key of the degree behind the slash.
  const slash = rest.lastIndexOf("/");
  const goal = slash < 0 ? undefined : readRooted(rest.slice(slash + 1), readings);
  const applied = findNumeral(isSmall, rest.slice(0, slash), readings);
  if (!goal || !applied) return undefined;
  return { written, root: mod(root + goal.root), ...applied };
}

/**
 * What stands behind a numeral, as this project writes it or else as behind a letter: ii7 and iim7.
 *
 * @param {boolean} isSmall
 * @param {string} rest
 * @param {Readings} readings
 */
function findNumeral(isSmall, rest, readings) {
  const { numerals, suffixes } = readings;
  return (
    find((isSmall ? "i" : "I") + rest, numerals, readings) ??
    (isSmall ? find(`m${rest}`, suffixes, readings) : undefined) ??
    find(rest, suffixes, readings)
  );
}

/**
 * The readings with the chords that stand in the archive itself: what is shown can be asked for.
 *
 * @param {Readings} readings
 * @param {[suffix: string, bass: number | null, notes: string, family: string][]} chords
 * @returns {Readings}
 */
export function readingsWith({ kinds, suffixes, numerals }, chords) {
  const [all, known] = [[...kinds], { ...suffixes }];
  for (const [suffix, , notes, family] of chords) {
    const text = bare(plain(suffix));
    if (text in known) continue;
    known[text] = all.length;
    all.push([notes.split("/")[0], family]);
  }
  return { kinds: all, suffixes: known, numerals };
}

const [SHARPS, FLATS] = ["C C♯ D D♯ E F F♯ G G♯ A A♯ B", "C D♭ D E♭ E F G♭ G A♭ A B♭ B"].map(
  (names) => names.split(" "),
);

/**
 * A symbol as it was typed, so many semitones higher, in flats or sharps.
 *
 * @param {string} written
 * @param {number} semitones
 * @param {boolean} flats
 */
export function moved(written, semitones, flats) {
  const names = flats ? FLATS : SHARPS;
  return written.replace(/(^|\/)([A-G])(♭♭|♯♯|bb|##|[b#♭♯]?)/gu, (_, slash, letter, signs) => {
    return slash + names[mod(LETTERS[letter] + shift(plain(signs)) + semitones)];
  });
}

/** @param {string} text */
const bare = (text) => text.replace(/[() ]/g, "");

/** @param {string} text @param {Record<string, number>} table @param {Readings} readings */
function find(text, table, { kinds }) {
  const place = table[bare(text)];
  if (place === undefined) return undefined;
  const [notes, family] = kinds[place];
  return { notes, family };
}
