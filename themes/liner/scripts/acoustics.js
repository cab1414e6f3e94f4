/** What instruments share: frequencies, glides, and noise that is the same each time. */

/** A4 = 440 Hz, equal temperament. @param {number} midi */
export const frequencyOf = (midi) => 440 * 2 ** ((midi - 69) / 12);

/** A bend or slide leaves early and has arrived when half of the note is over. */
/** @type {(detune: AudioParam, note: Played) => void} */
export function glide(detune, { when, seconds, midi, goal = midi }) {
  detune.setValueAtTime(0, when + seconds * 0.15);
  detune.linearRampToValueAtTime(100 * (goal - midi), when + seconds / 2);
}

/** Values from -1 to 1 whose sum is 0. @param {number} length */
export function makeNoise(length) {
  let state = 1;
  const noise = Float32Array.from({ length }, () => {
    state = (state * 48271) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  });
  const mean = noise.reduce((sum, value) => sum + value) / length;
  return noise.map((value) => value - mean);
}
