/** The clock of a performance: when each cue falls due, through loops and changes of tempo. */

/**
 * `lead` is heard once before the span, `cues` are what happens in it, in order. Every cue is
 * fired once, when `advance` comes to it; a new tempo counts from there.
 *
 * @param {Cue[]} lead @param {Cue[]} cues @param {Span} span @param {Fire} fire
 */
export function makeTransport(lead, cues, span, fire) {
  const all = [...lead, ...cues];
  let next = 0;
  // At `time` the music is at `place`; up to `horizon` all is fired.
  let place = lead[0]?.at ?? span.start;
  let time = 0;
  let horizon = 0;
  let quarter = 1;
  return {
    looping: false,

    begin(/** @type {number} */ when) {
      time = horizon = when;
    },

    /** @param {number} seconds those of a quarter note from here on */
    setQuarter(seconds) {
      place += (horizon - time) / quarter;
      time = horizon;
      quarter = seconds;
    },

    /** Puts off what is to come where nobody looked at the clock in time. */
    catchUp(/** @type {number} */ now) {
      const late = Math.max(0, now - horizon);
      time += late;
      horizon += late;
    },

    /** Returns when the end is reached: Infinity as long as that lies beyond `until`. */
    advance(/** @type {number} */ until) {
      horizon = Math.max(horizon, until);
      for (;;) {
        const cue = all[next];
        const when = time + ((cue ? cue.at : span.end) - place) * quarter;
        if (when > until) return Infinity;
        if (cue) {
          fire(cue, when, quarter);
          next++;
        } else if (this.looping) {
          time = when;
          place = span.start;
          next = lead.length;
        } else return when;
      }
    },
  };
}
