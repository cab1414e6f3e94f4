/** A bar of drums as a reader types it. */

export const QUARTER = 24;
const STEPS = /** @type {Record<string, number>} */ ({ sixteenths: 6, triplets: 8 });
export const DRUMS = /** @type {Record<string, string>} */ ({
  HH: "hi-hat", RC: "ride", CC: "crash", T1: "high tom", T2: "middle tom", FT: "floor tom",
  SD: "snare", SS: "side stick", HC: "clap", BD: "bass drum",
});

/** @param {string} meter @param {string} steps */
export const stepsOf = (meter, steps) => {
  const [count, unit] = meter.split("/").map(Number);
  return { step: STEPS[steps], number: (count * 4 * QUARTER) / unit / STEPS[steps] };
};

/**
 * Reads `BD x...x... SD ....x...`: a pattern that is shorter than the bar is repeated.
 *
 * @param {string} text
 * @param {string} meter
 * @param {string} steps
 * @returns {{ hits: Record<string, number[]>, unread?: string }}
 */
export function readPattern(text, meter, steps) {
  const { step, number } = stepsOf(meter, steps);
  /** @type {Record<string, number[]>} */
  const hits = {};
  const words = text.trim().split(/\s+/).filter(Boolean);
  for (let n = 0; n < words.length; n += 2) {
    const [drum, pattern = ""] = [words[n].toUpperCase(), words[n + 1]];
    const signs = [...pattern.replaceAll("|", "")];
    const fits = signs.length > 0 && number % signs.length === 0;
    if (!(drum in DRUMS) || !fits || !signs.every((sign) => "xXoO.-".includes(sign))) {
      return { hits: {}, unread: [words[n], pattern].join(" ").trim() };
    }
    const all = Array.from({ length: number }, (_, at) => signs[at % signs.length]);
    hits[drum] = all.flatMap((sign, at) => ("xXoO".includes(sign) ? [at * step] : []));
  }
  return { hits };
}
