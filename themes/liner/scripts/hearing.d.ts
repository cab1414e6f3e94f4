/**
 * What the scripts of hearing speak of. This file is for type checks and for readers; it is not
 * published. Places and lengths are quarter notes, times and spans of sound seconds.
 */

/** start, length, MIDI number, loudness, id, manner, the MIDI number it glides to */
type Stroke = [number, number, number, number, string, string?, number?];

/** number, start, length, onsets of its felt beats */
type Bar = [number, number, number, number[]];

interface Player {
  name: string;
  sound: "voice" | "guitar" | "bass" | "keys" | "drums" | "reed" | "chords";
  /** whether it is heard before the reader chooses */
  on: boolean;
  notes: Stroke[];
}

/** The record of what sounds (sitegen/performance/record.py). */
interface Sound {
  /** quarter notes a minute */
  tempo: number;
  /** whether the chart states its tempo */
  given: boolean;
  /** in the order of play */
  bars: Bar[];
  players: Player[];
}

/** The stretch of a chart that is played. */
interface Span {
  start: number;
  end: number;
}

/** Something that happens at a place: a player's stroke, a bar's beginning, or a click. */
interface Cue {
  at: number;
  length?: number;
  /** the player's place in the record */
  player?: number;
  stroke?: Stroke;
  /** its number */
  bar?: number;
  /** 2 for a bar's first beat, 1 for another */
  click?: number;
}

/** Is given a cue, its time on the audio clock, and the seconds of a quarter note. */
type Fire = (cue: Cue, when: number, quarter: number) => void;

/** What the reader has set. */
interface Choices {
  /** the numbers of the bars */
  first: number;
  last: number;
  /** a share of the chart's tempo */
  tempo: number;
  /** from 0 to 1 */
  volume: number;
  /** which players are heard */
  heard: boolean[];
  looping: boolean;
  counting: boolean;
  clicking: boolean;
}

/** A note for an instrument. */
interface Played {
  sound: Player["sound"];
  midi: number;
  when: number;
  seconds: number;
  /** its height, 1 is full scale */
  level: number;
  manner: string;
  /** the MIDI number it glides to */
  goal?: number;
  /** what it is heard through */
  into: AudioNode;
}

/** Schedules a note on an instrument. */
type Play = (context: BaseAudioContext, note: Played) => void;

/** How a string is struck. */
interface Pluck {
  /** seconds until a low string has died away by 60 dB */
  ring: number;
  /** how much of a sudden change comes through, 1 for all */
  open: number;
  /** the share of noise in the pluck */
  scratch: number;
}

/** How a held tone sounds. */
interface Tone {
  /** the strength of harmonic k, whose frequency is f */
  partial: (k: number, f: number) => number;
  /** seconds to rise */
  attack: number;
  /** the share of its height that it falls to, and the pace of that */
  held: number;
  fall: number;
  /** the pace of dying away */
  release: number;
}

/** How a drum sounds. */
interface Drum {
  /** frequency at first and at last, seconds to die away, strength */
  tones?: [number, number, number, number][];
  /** kind of filter, its frequency, seconds to die away, strength */
  noise?: [BiquadFilterType, number, number, number];
}

/** The lights of one chart; a name is a note's id or a bar's name. */
interface Lights {
  plan: (name: string, from: number, until: number) => void;
  /** Lights what sounds at a time, and nothing else. */
  follow: (now: number) => void;
  clear: () => void;
}
