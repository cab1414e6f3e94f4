/** One chart being played: its cues, struck ahead of time, and the lights that follow them. */

import { makeBand } from "./band.js";
import { barName, makeLights } from "./lights.js";
import { findCountIn, findCues, findSpan } from "./passage.js";
import { makeTransport } from "./transport.js";

// The clock is looked at every TICK milliseconds, and what falls due within AHEAD seconds is
// given to the audio thread, which keeps its time exactly.
const TICK = 25;
const AHEAD = 0.12;
const FIRST_IN = 0.1;
const FADE_IN = 0.5;
const RING = 1.5;

/**
 * Readies a band and a transport that gives it every cue; an offline context will do as well.
 *
 * @param {BaseAudioContext} context @param {Sound} sound @param {Choices} choices
 * @param {Fire} [watch] is given every cue too
 */
export function prepare(context, sound, choices, watch) {
  const span = findSpan(sound, choices.first, choices.last);
  const band = makeBand(context, sound.players);
  const lead = choices.counting ? findCountIn(sound, span) : [];
  const transport = makeTransport(lead, findCues(sound, span), span, (cue, when, quarter) => {
    band.strike(cue, when, quarter);
    if (cue.click) band.click(when, cue.click, cue.at < span.start);
    watch?.(cue, when, quarter);
  });
  /** @param {Choices} choices @param {number} [fade] */
  function change({ tempo, looping, heard, clicking, volume }, fade) {
    transport.looping = looping;
    transport.setQuarter(60 / (sound.tempo * tempo));
    band.mix(heard, clicking);
    band.setVolume(volume, fade);
  }
  transport.begin(context.currentTime + FIRST_IN);
  change(choices, FADE_IN);
  return { band, transport, change };
}

/**
 * Plays a chart from now on; `onBar` is told each bar as it is heard.
 *
 * @param {AudioContext} context @param {HTMLElement} figure
 * @param {Sound} sound @param {Choices} choices
 * @param {{ onBar: (name: string) => void, onEnd: () => void }} report
 */
export function rehearse(context, figure, sound, choices, { onBar, onEnd }) {
  const lights = makeLights(figure, sound, onBar);
  let { heard } = choices;
  const { band, transport, change } = prepare(context, sound, choices, (cue, when, quarter) => {
    const { bar, stroke, player = 0, length = 0 } = cue;
    const until = when + length * quarter;
    if (bar !== undefined) lights.plan(barName(bar), when, until);
    if (stroke && heard[player]) lights.plan(stroke[4], when, until);
  });
  const timer = setInterval(tick, TICK);
  let frame = requestAnimationFrame(follow);

  function tick() {
    transport.catchUp(context.currentTime);
    if (context.currentTime >= transport.advance(context.currentTime + AHEAD)) end(RING);
  }

  function follow() {
    lights.follow(context.currentTime - (context.outputLatency || 0));
    frame = requestAnimationFrame(follow);
  }

  /** @param {number} ring seconds in which the last notes may die away */
  function end(ring) {
    clearInterval(timer);
    cancelAnimationFrame(frame);
    lights.clear();
    setTimeout(band.leave, 1000 * ring);
    onEnd();
  }

  return {
    /** @param {Choices} now */
    change(now) {
      heard = now.heard;
      change(now);
    },

    stop() {
      band.setVolume(0);
      end(0.2);
    },
  };
}
