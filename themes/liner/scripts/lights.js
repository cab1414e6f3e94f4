/** What sounds lights up: a bar under notes in every drawing, a mark in the bars of changes. */

const HEADS = 'use[href^="#g-E0"], text';
const PLACE = /^(.+)-(\d+-\d+(?:_\d+_\d+)?(?:-again\d+)?)(-tab)?$/;
const MARGIN = 50;
const BAR = "bar ";

/** No event has a blank in its name. @param {number} bar */
export const barName = (bar) => BAR + (bar || "(pickup)");

/** @type {(figure: HTMLElement, sound: Sound, onBar: (name: string) => void) => Lights} */
export function makeLights(figure, sound, onBar) {
  let drawn = findDrawn(figure, sound);
  /** @type {[string, number, number][]} */
  const waiting = [];
  /** @type {Map<string, number>} */
  const lit = new Map();
  /** @param {string} name @param {boolean} on */
  const light = (name, on) => drawn.get(name)?.forEach((node) => turn(node, on));
  /** @param {boolean} on */
  const lightAll = (on) => [...lit.keys()].forEach((name) => light(name, on));
  // The reader may change to the drawing of the other way while it plays.
  const onRedrawn = () => {
    lightAll(false);
    drawn = findDrawn(figure, sound);
    lightAll(true);
  };
  figure.addEventListener("redrawn", onRedrawn);
  return {
    plan(name, from, until) {
      waiting.push([eventOf(name), from, until]);
    },

    follow(now) {
      while (waiting[0]?.[1] <= now) {
        const [[name, , until]] = waiting.splice(0, 1);
        if (!lit.has(name)) light(name, true);
        if (name.startsWith(BAR)) onBar(name);
        lit.set(name, until);
      }
      for (const [name, until] of lit) {
        if (until > now) continue;
        light(name, false);
        lit.delete(name);
      }
    },

    clear() {
      lightAll(false);
      figure.removeEventListener("redrawn", onRedrawn);
    },
  };
}

/** The event that a note belongs to: its notes light up together. @param {string} id */
const eventOf = (id) => id.replace(/-n\d+$/, "");

/**
 * Returns what is drawn for each event, wide and narrow, in notes and tablature, and for each bar
 * of changes. The second of two tied notes has a name of its own, which the record does not know:
 * it goes with the event before it in its voice.
 *
 * @type {(figure: HTMLElement, sound: Sound) => Map<string, Element[]>}
 */
function findDrawn(figure, { players, bars }) {
  /** @type {Map<string, Element[]>} */
  const drawn = new Map();
  for (const { notes } of players) for (const [, , , , id] of notes) drawn.set(eventOf(id), []);
  /** @type {Record<string, string>} */
  const latest = {};
  for (const node of figure.querySelectorAll(":is(.note, .chord, .tabGrp)[id]")) {
    const [, voice = "", place, tab] = PLACE.exec(eventOf(node.id)) ?? [];
    const name = `${voice.slice(figure.id.length + 1).replace(/^narrow-/, "")}-${place}`;
    if (drawn.has(name)) latest[voice + tab] = name;
    drawn.get(latest[voice + tab])?.push(node);
  }
  const first = Math.min(...bars.map(([number]) => number));
  figure.querySelectorAll(".changes-bar").forEach((bar, n) => drawn.set(barName(first + n), [bar]));
  return drawn;
}

/** @param {Element} node @param {boolean} on */
function turn(node, on) {
  if (node instanceof SVGGraphicsElement) {
    node.classList.toggle("lit", on);
    underlays.get(node)?.remove();
    if (on) underlay(node);
  } else node.ariaCurrent = on ? "true" : null;
}

/** @type {WeakMap<Element, Element>} */
const underlays = new WeakMap();

/** Lays a bar under the heads of a note or chord, and under all else of its measure. */
function underlay(/** @type {SVGGraphicsElement} */ node) {
  /** @type {NodeListOf<SVGGraphicsElement>} */
  const heads = node.querySelectorAll(HEADS);
  const boxes = [...heads].map((head) => head.getBBox()).filter((box) => box.width);
  if (!boxes.length) return;
  const x = Math.min(...boxes.map((box) => box.x)) - MARGIN;
  const y = Math.min(...boxes.map((box) => box.y)) - MARGIN;
  const width = Math.max(...boxes.map((box) => box.x + box.width)) - x + MARGIN;
  const height = Math.max(...boxes.map((box) => box.y + box.height)) - y + MARGIN;
  const bar = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [name, value] of Object.entries({ x, y, width, height, rx: MARGIN })) {
    bar.setAttribute(name, `${value}`);
  }
  bar.classList.add("underlay");
  (node.closest(".measure") ?? node).prepend(bar);
  underlays.set(node, bar);
}
