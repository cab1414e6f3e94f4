/**
 * The indexes of tunes made ready for searching: the lines of sitegen/finding/tunes_index.py one
 * after the other in arrays of numbers, for all their notes are gone through at every question.
 */

import { FIRST, MIDDLE, mod, signed } from "./columns.js";

/**
 * @typedef {object} Tunes
 * @property {number} count of lines, which stand in the archive's order
 * @property {Uint32Array} firsts the first note of each line, and the end of the last one
 * @property {Uint8Array} midi of all notes
 * @property {Uint8Array} classes their pitch classes
 * @property {Uint32Array} writeUps
 * @property {Uint16Array} charts
 * @property {Uint16Array} lines which line of its write-up each is
 * @property {Int8Array} tonics pitch classes, -1 without
 * @property {Uint8Array} flats 1 where the key has flats
 * @property {string[]} parts
 * @typedef {{ parts: string[], write_ups: string, charts: string, lines: string, names: string,
 *   tonics: string, lengths: string, opens: string, steps: string }} File
 * @typedef {{ file: File, row: number, writeUp: number, line: number, from: number }} Row
 */

const FLATS = 16;

/** @param {File[]} files @returns {Tunes} */
export function decode(files) {
  const rows = files.flatMap(rowsOf).sort((one, other) => one.writeUp - other.writeUp || one.line - other.line);
  const count = rows.length;
  const notes = files.reduce((sum, { steps, opens }) => sum + steps.length + opens.length, 0);
  const tunes = {
    count,
    firsts: new Uint32Array(count + 1),
    midi: new Uint8Array(notes),
    classes: new Uint8Array(notes),
    writeUps: Uint32Array.from(rows, ({ writeUp }) => writeUp),
    charts: Uint16Array.from(rows, ({ file, row }) => file.charts.charCodeAt(row) - FIRST),
    lines: Uint16Array.from(rows, ({ line }) => line),
    tonics: new Int8Array(count),
    flats: new Uint8Array(count),
    parts: rows.map(({ file, row }) => file.parts[file.names.charCodeAt(row) - FIRST]),
  };
  rows.forEach(({ file, row, from }, n) => {
    const key = file.tonics.charCodeAt(row) - FIRST;
    tunes.tonics[n] = (key % FLATS) - 1;
    tunes.flats[n] = key >= FLATS ? 1 : 0;
    const end = tunes.firsts[n] + file.lengths.charCodeAt(row) - FIRST;
    let pitch = file.opens.charCodeAt(row) - FIRST;
    for (let at = tunes.firsts[n], step = from; at < end; at++, step++) {
      tunes.midi[at] = pitch;
      tunes.classes[at] = mod(pitch);
      pitch += signed(file.steps.charCodeAt(step) - FIRST);
    }
    tunes.firsts[n + 1] = end;
  });
  return tunes;
}

/** Where the lines of a file stand. @param {File} file @returns {Row[]} */
function rowsOf(file) {
  let [writeUp, from] = [0, 0];
  return Array.from(file.lines, (sign, row) => {
    writeUp += file.write_ups.charCodeAt(row) - FIRST;
    const found = { file, row, writeUp, line: sign.charCodeAt(0) - FIRST, from };
    from += file.lengths.charCodeAt(row) - FIRST - 1;
    return found;
  });
}

/** The ticks from note to note of a line, and the bar of each. @param {[gaps: string, bars: string]} line */
export function readTimes([gaps, bars]) {
  let bar = 0;
  return {
    gaps: Array.from(gaps, (sign) => sign.charCodeAt(0) - FIRST),
    bars: Array.from(bars, (sign) => (bar += sign.charCodeAt(0) - MIDDLE)),
  };
}
