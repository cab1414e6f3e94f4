/** Which stretch of a chart is played, and what happens in it. */

/**
 * Returns the span between two bars, given by number: the whole chart with its repeats, or a part
 * of it from where its first bar is first played.
 *
 * @type {(sound: Sound, first: number, last: number) => Span}
 */
export function findSpan({ bars }, first, last) {
  const numbers = bars.map(([number]) => number);
  const from = Math.max(0, numbers.indexOf(first));
  const whole = !from && last === Math.max(...numbers);
  const to = whole ? bars.length - 1 : Math.max(from, numbers.indexOf(last, from));
  return { start: bars[from][1], end: bars[to][1] + bars[to][2] };
}

/**
 * Returns what happens in a span, in order; what would sound beyond it is cut off there.
 *
 * @type {(sound: Sound, span: Span) => Cue[]}
 */
export function findCues({ bars, players }, { start, end }) {
  /** @type {Cue[]} */
  const cues = [];
  for (const [bar, at, length, clicks] of bars) {
    cues.push({ at, bar, length });
    for (const click of clicks) cues.push({ at: click, click: bar && click === at ? 2 : 1 });
  }
  players.forEach(({ notes }, player) => {
    for (const stroke of notes) {
      const [at, length] = stroke;
      cues.push({ at, player, stroke, length: Math.min(length, end - at) });
    }
  });
  return cues.filter(({ at }) => at >= start && at < end).sort((a, b) => a.at - b.at);
}

/**
 * Returns a bar of clicks before a span; a pickup is led in by what its own bar lacks as well.
 *
 * @type {(sound: Sound, span: Span) => Cue[]}
 */
export function findCountIn({ bars }, { start }) {
  const place = bars.findIndex(([, at]) => at === start);
  const [number, , length] = bars[place];
  const [, at, full, clicks] = (!number && bars[place + 1]) || bars[place];
  const lead = length < full ? 2 * full - length : full;
  return [0, full]
    .flatMap((bar) => clicks.map((click) => bar + click - at))
    .filter((count) => count < lead)
    .map((count) => ({ at: start - lead + count, click: count % full ? 1 : 2 }));
}
