/** The players of a chart at their instruments, and the desk that their sound goes through. */

import { hit } from "./drums.js";
import { pluck } from "./plucked.js";
import { hold } from "./tones.js";

/** How high the loudest note goes; 1 is full scale, before the volume. */
const LEVELS = {
  guitar: 0.2, bass: 0.34, voice: 0.24, keys: 0.2, reed: 0.2, chords: 0.15, drums: 0.34,
};
/** @type {Record<string, Play>} */
const INSTRUMENTS = { guitar: pluck, bass: pluck, drums: hit };
const ROLL = 0.055;
const FLAM = 0.03;

/** What goes over the knee is pressed together, so that nothing gets to full scale. */
const [HIGHEST, KNEE, ROOM] = [4, 0.6, 0.38];
const CEILING = Float32Array.from({ length: 4097 }, (_, n) => {
  const height = HIGHEST * (n / 2048 - 1);
  const over = Math.abs(height) - KNEE;
  return over < 0 ? height : Math.sign(height) * (KNEE + ROOM * Math.tanh(over / ROOM));
});

/** @param {BaseAudioContext} context @param {Player[]} players */
export function makeBand(context, players) {
  const desk = new GainNode(context, { gain: 1 / HIGHEST });
  const master = new GainNode(context, { gain: 0 });
  desk.connect(new WaveShaperNode(context, { curve: CEILING })).connect(master);
  master.connect(context.destination);
  // One strip for each player, and the last for the click.
  const strips = [...players, 0].map(() => new GainNode(context, { gain: 0 }));
  for (const strip of strips) strip.connect(desk);
  return {
    /** Plays the stroke of a cue. @type {Fire} */
    strike({ player = 0, stroke, length = 0 }, when, quarter) {
      if (!stroke) return;
      const [, , midi, loudness, , manner = "", goal] = stroke;
      const { sound } = players[player];
      const level = LEVELS[sound] * loudness ** 1.3;
      const seconds = length * quarter;
      const note = { sound, midi, when, seconds, level, manner, goal, into: strips[player] };
      for (const single of spread(note)) (INSTRUMENTS[sound] ?? hold)(context, single);
    },

    /** A click is heard where clicks are, and always before the chart. */
    /** @type {(when: number, click: number, always: boolean) => void} */
    click(when, click, always) {
      const source = new OscillatorNode(context, { frequency: 600 + 500 * click });
      const tick = new GainNode(context, { gain: 0 });
      tick.gain.setValueAtTime(0.14, when);
      tick.gain.exponentialRampToValueAtTime(0.0001, when + 0.05);
      source.connect(tick).connect(always ? desk : strips[players.length]);
      source.start(when);
      source.stop(when + 0.05);
    },

    /** @param {boolean[]} heard @param {boolean} clicking */
    mix(heard, clicking) {
      strips.forEach(({ gain }, place) => {
        const goal = heard[place] ?? clicking ? 1 : 0;
        gain.setTargetAtTime(goal, context.currentTime, 0.01);
      });
    },

    /** Goes to a volume from 0 to 1, within about `seconds`. */
    /** @type {(volume: number, seconds?: number) => void} */
    setVolume(volume, seconds = 0.05) {
      master.gain.setTargetAtTime(volume ** 2, context.currentTime, seconds / 3);
    },

    leave: () => master.disconnect(),
  };
}

/** The strokes of one note: a roll has many, a flam a soft one before. @param {Played} note */
function* spread(note) {
  const { when, seconds, level, manner } = note;
  if (manner === "flam") yield { ...note, when: when - FLAM, level: level * 0.4, seconds: FLAM };
  yield note;
  const last = manner === "roll" ? seconds - ROLL / 2 : 0;
  for (let later = ROLL; later < last; later += ROLL) {
    yield { ...note, when: when + later, level: level * 0.6 };
  }
}
