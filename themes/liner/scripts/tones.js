/** Tones that are held: a voice, keys, a reed, and the soft chords under a chart. */

import { frequencyOf, glide } from "./acoustics.js";

/** A resonance: 1 at its middle. @type {(f: number, middle: number, width: number) => number} */
const near = (f, middle, width) => 1 / (1 + ((f - middle) / width) ** 2);

/** @type {Record<string, Tone>} */
const TONES = {
  voice: {
    partial: (k, f) =>
      (0.1 + near(f, 650, 150) + near(f, 1100, 200) / 2 + near(f, 2700, 300) / 4) / k,
    attack: 0.05, held: 0.85, fall: 0.2, release: 0.06,
  },
  keys: { partial: (k) => k ** -1.8, attack: 0.004, held: 0, fall: 0.7, release: 0.07 },
  reed: {
    partial: (k, f) => ((k % 2 ? 1 : 0.45) * (0.3 + near(f, 1300, 700))) / k,
    attack: 0.03, held: 0.8, fall: 0.15, release: 0.04,
  },
  chords: { partial: (k) => k ** -2.6, attack: 0.02, held: 0.5, fall: 0.6, release: 0.05 },
};

/** The muffled manners, and how long each may last. @type {Record<string, number>} */
const MUFFLED = { dead: 0.05, "palm mute": 0.15, ghost: Infinity };

/** @type {WeakMap<BaseAudioContext, Map<string, PeriodicWave>>} */
const waves = new WeakMap();

/** @type {Play} */
export function hold(context, note) {
  const { sound, when, manner, midi, level } = note;
  const { attack, held, fall, release } = TONES[sound];
  const frequency = frequencyOf(midi);
  const source = new OscillatorNode(context, { frequency, periodicWave: findWave(context, note) });
  const seconds = Math.min(note.seconds, MUFFLED[manner] ?? Infinity);
  const rise = when + Math.min(attack * (manner === "joined" ? 2 : 1), seconds / 2);
  const breath = new GainNode(context, { gain: 0 });
  breath.gain.setValueAtTime(0, when);
  breath.gain.linearRampToValueAtTime(level, rise);
  breath.gain.setTargetAtTime(level * held, rise, fall);
  breath.gain.setTargetAtTime(0, when + seconds, release);
  glide(source.detune, note);
  if (sound === "voice" && seconds > 0.6) tremble(context, source.detune, when);
  const muffler = MUFFLED[manner] && new BiquadFilterNode(context, { frequency, Q: 0 });
  (muffler ? source.connect(muffler) : source).connect(breath).connect(note.into);
  source.start(when);
  source.stop(when + seconds + 8 * release);
}

/** A vibrato for a note that stands for a while. */
/** @type {(context: BaseAudioContext, detune: AudioParam, when: number) => void} */
function tremble(context, detune, when) {
  const wave = new OscillatorNode(context, { frequency: 5.3 });
  const depth = new GainNode(context, { gain: 0 });
  depth.gain.setValueAtTime(0, when + 0.35);
  depth.gain.linearRampToValueAtTime(14, when + 0.8);
  wave.connect(depth).connect(detune);
  wave.start(when + 0.35);
  wave.stop(when + 30);
}

/** @type {(context: BaseAudioContext, note: Played) => PeriodicWave} */
function findWave(context, { sound, midi }) {
  const known = waves.get(context) ?? new Map();
  waves.set(context, known);
  const name = sound + midi;
  if (!known.has(name)) {
    const { partial } = TONES[sound];
    const imag = Array.from({ length: 33 }, (_, k) => k && partial(k, k * frequencyOf(midi)));
    known.set(name, new PeriodicWave(context, { imag }));
  }
  return known.get(name);
}
