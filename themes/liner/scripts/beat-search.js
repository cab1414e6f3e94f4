/**
 * Bars of drums that have some hits: on the drums that are asked for just these, else the nearest,
 * counted in hits more or fewer. Of equal bars the order of the archive decides.
 */

import { FIRST } from "./columns.js";

/**
 * @typedef {object} Bar
 * @property {string} meter
 * @property {number} length in ticks
 * @property {Record<string, number[]>} hits ticks by drum
 * @property {number[]} bars
 * @typedef {object} Chart
 * @property {number} writeUp
 * @property {number} chart
 * @property {number} tempo
 * @property {string} feel
 * @property {Bar[]} beats
 * @typedef {object} Question
 * @property {string} meter
 * @property {Record<string, number[]>} hits the drums that count, some of them perhaps silent
 * @property {number} slowest
 * @property {number} fastest
 * @property {string} feel "" for any
 * @typedef {object} Match
 * @property {Chart} chart
 * @property {Bar} [bar]
 * @property {number} distance
 * @property {[drum: string, tick: number][]} more hits that were not asked for
 * @property {[drum: string, tick: number][]} fewer hits that are missing there
 */

const MOST_NEAR = 24;
/** Of so many hits that are asked for, one may differ. */
const HITS_A_FAULT = 3;

/** @param {any[]} file @returns {Chart[]} */
export const decode = (file) =>
  file.map(([writeUp, chart, tempo, feel, bars]) => ({
    writeUp,
    chart,
    tempo,
    feel,
    beats: bars.map((/** @type {[string, number, Record<string, string>, number[]]} */ bar) => {
      const hits = Object.entries(bar[2]).map(([drum, text]) => [drum, ticks(text)]);
      return { meter: bar[0], length: bar[1], hits: Object.fromEntries(hits), bars: bar[3] };
    }),
  }));

/** @param {string} text */
const ticks = (text) => [...text].map((sign) => sign.charCodeAt(0) - FIRST);

/**
 * @param {Chart[]} charts
 * @param {Question} question
 * @returns {Match[]} one for each chart: those that have it, or the nearest where none has
 */
export function search(charts, question) {
  const drums = Object.entries(question.hits);
  const asked = drums.reduce((sum, [, hits]) => sum + hits.length, 0);
  const farthest = Math.max(1, Math.floor(asked / HITS_A_FAULT));
  /** @type {Match[]} */
  const found = [];
  for (const chart of charts) {
    if (!fits(chart, question)) continue;
    if (!drums.length) {
      found.push({ chart, distance: 0, more: [], fewer: [] });
      continue;
    }
    /** @type {Match | undefined} */
    let best;
    for (const bar of chart.beats) {
      if (bar.meter !== question.meter) continue;
      const match = compare(chart, bar, drums);
      if (match.distance <= farthest && (!best || match.distance < best.distance)) best = match;
    }
    if (best) found.push(best);
  }
  found.sort((one, other) => one.distance - other.distance);
  const same = found.filter(({ distance }) => !distance);
  return same.length ? same : found.slice(0, MOST_NEAR);
}

/** @param {Chart} chart @param {Question} question */
function fits({ tempo, feel }, { slowest, fastest, feel: wanted }) {
  if (wanted && feel !== wanted) return false;
  if (slowest <= 0 && fastest === Infinity) return true;
  return tempo > 0 && tempo >= slowest && tempo <= fastest;
}

/** @param {Chart} chart @param {Bar} bar @param {[string, number[]][]} drums @returns {Match} */
function compare(chart, bar, drums) {
  /** @type {[string, number][]} */
  const more = [];
  /** @type {[string, number][]} */
  const fewer = [];
  for (const [drum, asked] of drums) {
    const there = bar.hits[drum] ?? [];
    for (const tick of there) if (!asked.includes(tick)) more.push([drum, tick]);
    for (const tick of asked) if (!there.includes(tick)) fewer.push([drum, tick]);
  }
  return { chart, bar, distance: more.length + fewer.length, more, fewer };
}
