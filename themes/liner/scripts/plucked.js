/**
 * Plucked strings: a delay line with a loss in its loop (Karplus and Strong, "Digital Synthesis
 * of Plucked-String and Drum Timbres", 1983), tuned by an all-pass filter (Jaffe and Smith,
 * "Extensions of the Karplus-Strong Plucked-String Algorithm", 1983).
 */

import { frequencyOf, glide, makeNoise } from "./acoustics.js";

/** @type {Record<string, Pluck>} */
const TOUCHES = {
  guitar: { ring: 6, open: 0.8, scratch: 0.25 },
  bass: { ring: 6, open: 0.13, scratch: 0.1 },
};
/** @type {Record<string, (touch: Pluck) => Pluck>} */
const MANNERS = {
  dead: ({ open }) => ({ ring: 0.07, open: open / 10, scratch: 0.3 }),
  "palm mute": ({ open }) => ({ ring: 0.35, open: open / 8, scratch: 0.1 }),
  ghost: ({ ring, open }) => ({ ring: ring / 3, open: open / 8, scratch: 0.1 }),
  joined: ({ ring, open }) => ({ ring, open: open / 5, scratch: 0 }),
  harmonic: () => ({ ring: 8, open: 0.03, scratch: 0 }),
};
const LONGEST = 4;
const PLUCKED_AT = 0.18;
const LOW_STRING = 82;

/** @type {Map<string, AudioBuffer>} */
const strings = new Map();

/** @type {Play} */
export function pluck(context, note) {
  const { when, manner, level } = note;
  const source = new AudioBufferSourceNode(context, {
    buffer: findString(context.sampleRate, note),
  });
  const hand = new GainNode(context, { gain: 0 });
  const end = when + Math.min(manner === "let ring" ? LONGEST : note.seconds, LONGEST - 0.5);
  const rise = manner === "joined" ? 0.02 : 0;
  hand.gain.setValueAtTime(rise ? 0 : level, when);
  hand.gain.linearRampToValueAtTime(level, when + rise);
  hand.gain.setTargetAtTime(0, end, 0.04);
  glide(source.detune, note);
  source.connect(hand).connect(note.into);
  source.start(when);
  source.stop(end + 0.4);
}

/** @type {(rate: number, note: Played) => AudioBuffer} */
function findString(sampleRate, { sound, midi, manner }) {
  const name = [sampleRate, sound, midi, manner].join();
  let buffer = strings.get(name);
  if (!buffer) {
    const touch = MANNERS[manner]?.(TOUCHES[sound]) ?? TOUCHES[sound];
    const length = Math.ceil(sampleRate * Math.min(LONGEST, touch.ring));
    buffer = new AudioBuffer({ length, sampleRate });
    vibrate(buffer.getChannelData(0), sampleRate, frequencyOf(midi), touch);
    strings.set(name, buffer);
  }
  return buffer;
}

/**
 * Fills `out` with a string, its loudest sample at 1. The loop is as long as a period: `whole`
 * samples, half of one in the average that is its loss, and the rest in the all-pass, whose
 * coefficient makes the phase right at the fundamental.
 *
 * @type {(out: Float32Array, rate: number, frequency: number, touch: Pluck) => void}
 */
function vibrate(out, rate, frequency, { ring, open, scratch }) {
  const period = rate / frequency;
  const whole = Math.floor(period - 0.8);
  const rest = period - 0.5 - whole;
  const turn = Math.PI / period;
  const tune = Math.sin(turn * (1 - rest)) / Math.sin(turn * (1 + rest));
  const last = ring * Math.min(1, Math.sqrt(LOW_STRING / frequency));
  const keep = 10 ** (-3 / (frequency * last));
  const noise = makeNoise(whole);
  let [struck, before, averaged, tuned, peak] = [0, 0, 0, 0, 0];
  for (let n = 0; n < out.length; n++) {
    const back = n < whole ? 0 : out[n - whole];
    const average = (back + before) / 2;
    tuned = tune * (average - tuned) + averaged;
    before = back;
    averaged = average;
    const push = (n < PLUCKED_AT * whole ? 1 : 0) - PLUCKED_AT;
    struck += open * ((n < whole ? push + scratch * noise[n] : 0) - struck);
    out[n] = struck + keep * tuned;
    peak = Math.max(peak, Math.abs(out[n]));
  }
  out.forEach((value, n) => (out[n] = value / peak));
}
