/** A drum kit of tones that fall and noise that is filtered, by General MIDI percussion number. */

import { makeNoise } from "./acoustics.js";

/** @type {(frequency: number) => Drum} */
const tom = (frequency) => ({
  tones: [[frequency * 1.5, frequency, 0.45, 1]],
  noise: ["lowpass", 1500, 0.04, 0.3],
});
/** @type {(seconds: number) => Drum} */
const hat = (seconds) => ({ noise: ["highpass", 7500, seconds, 0.7] });
/** @type {(pitch: number, seconds: number) => Drum} */
const crash = (pitch, seconds) => ({
  tones: [[pitch, pitch, seconds / 3, 0.05], [pitch * 1.48, pitch * 1.48, seconds / 3, 0.05]],
  noise: ["highpass", pitch * 8, seconds, 0.6],
});
/** @type {Drum} */
const SNARE = { tones: [[240, 185, 0.12, 0.6]], noise: ["highpass", 1400, 0.2, 0.8] };

/** The sounds of sitegen/score/drums.py. @type {Record<number, Drum>} */
const KIT = {
  36: { tones: [[150, 48, 0.35, 1.2]], noise: ["lowpass", 2500, 0.015, 0.3] },
  37: { tones: [[1750, 1700, 0.05, 0.7]], noise: ["bandpass", 3000, 0.02, 0.5] },
  38: SNARE,
  39: { noise: ["bandpass", 1300, 0.16, 1.6] },
  42: hat(0.07),
  43: tom(86),
  44: hat(0.05),
  46: hat(0.7),
  47: tom(125),
  48: tom(150),
  49: crash(520, 1.8),
  51: { tones: [[820, 820, 0.5, 0.1], [1330, 1330, 0.4, 0.07]], noise: ["highpass", 6500, 0.7, 0.3] },
  52: crash(390, 1.3),
  53: { tones: [[840, 840, 0.9, 0.35], [1270, 1270, 0.7, 0.2]], noise: ["highpass", 7000, 0.1, 0.15] },
  54: { tones: [[6100, 6100, 0.1, 0.1]], noise: ["highpass", 8000, 0.16, 0.5] },
  55: crash(680, 0.7),
  56: { tones: [[560, 560, 0.18, 0.45], [845, 845, 0.18, 0.4]] },
  57: crash(590, 1.6),
  70: { noise: ["highpass", 6000, 0.05, 0.5] },
};
const HATS = [42, 44, 46];
const SILENCE = 0.001;

/** The hi-hat that still sounds in a part: the next stroke on it ends it. */
/** @type {WeakMap<AudioNode, GainNode>} */
const hats = new WeakMap();
/** @type {AudioBuffer | undefined} */
let hiss;

/** @type {Play} */
export function hit(context, { midi, when, into, manner, level }) {
  const { tones = [], noise } = KIT[midi] ?? SNARE;
  const drum = new GainNode(context, { gain: level });
  if (HATS.includes(midi)) {
    hats.get(into)?.gain.setTargetAtTime(0, when, 0.008);
    hats.set(into, drum);
  }
  const muffler = manner === "ghost" && new BiquadFilterNode(context, { frequency: 2200, Q: 0 });
  (muffler ? drum.connect(muffler) : drum).connect(into);
  for (const [frequency, last, seconds, strength] of tones) {
    const source = new OscillatorNode(context, { frequency });
    source.frequency.setValueAtTime(frequency, when);
    source.frequency.exponentialRampToValueAtTime(last, when + Math.min(0.07, seconds));
    strike(source, when, seconds, strength).connect(drum);
  }
  if (noise) {
    const [type, frequency, seconds, strength] = noise;
    const source = new AudioBufferSourceNode(context, { buffer: findHiss(context), loop: true });
    const filter = new BiquadFilterNode(context, { type, frequency });
    strike(source, when, seconds, strength).connect(filter).connect(drum);
  }
}

/** Lets a source sound and die away. */
/** @type {(source: AudioScheduledSourceNode, when: number, seconds: number, strength: number) => AudioNode} */
function strike(source, when, seconds, strength) {
  const skin = new GainNode(source.context, { gain: 0 });
  skin.gain.setValueAtTime(strength, when);
  skin.gain.exponentialRampToValueAtTime(strength * SILENCE, when + seconds);
  source.start(when);
  source.stop(when + seconds);
  return source.connect(skin);
}

/** @param {BaseAudioContext} context */
function findHiss({ sampleRate }) {
  if (!hiss) {
    hiss = new AudioBuffer({ length: sampleRate, sampleRate });
    hiss.copyToChannel(makeNoise(sampleRate), 0);
  }
  return hiss;
}
