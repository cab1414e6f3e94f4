/** The controls that play a chart; what makes the sound is loaded when it is first asked for. */

import { readChoices, showTempo, shareVolume } from "./hearing-choices.js";

const IDLE = 2000;

/** @type {AudioContext | undefined} */
let context;
/** The one chart that plays. @type {{ stop: () => void } | undefined} */
let playing;

/** @param {Document | Element} root */
export function enhance(root) {
  const listening = new AbortController();
  const boxes = /** @type {HTMLFieldSetElement[]} */ ([...root.querySelectorAll(".hearing")]);
  boxes.forEach((box, place) => {
    const caution = /** @type {HTMLElement} */ (box.querySelector(".hearing-caution"));
    caution.hidden = place > 0;
    setUp(box, listening.signal);
    box.hidden = false;
  });
  shareVolume(boxes, listening.signal);
  // A recording that starts stops the chart that plays.
  const heard = { capture: true, signal: listening.signal };
  root.addEventListener("play", () => playing?.stop(), heard);
  return () => {
    listening.abort();
    playing?.stop();
    for (const box of boxes) box.hidden = true;
  };
}

/** @param {HTMLFieldSetElement} box @param {AbortSignal} signal */
function setUp(box, signal) {
  const figure = /** @type {HTMLElement} */ (box.closest("figure"));
  const sound = JSON.parse(figure.querySelector(".chart-sound")?.textContent ?? "");
  const button = /** @type {HTMLButtonElement} */ (box.querySelector("[name=play]"));
  const word = /** @type {HTMLElement} */ (box.querySelector(".hearing-word"));
  const place = /** @type {HTMLElement} */ (box.querySelector(".hearing-place"));
  /** @type {ReturnType<import("./rehearsal.js").rehearse> | undefined} */
  let rehearsal;

  /** @param {string} next what the button does when it is pressed */
  function offer(next) {
    button.value = next.toLowerCase();
    [word.textContent, place.textContent] = [next, ""];
  }

  function onEnd() {
    rehearsal = playing = undefined;
    offer("Play");
    setTimeout(() => playing ?? context?.suspend(), IDLE);
  }

  async function start() {
    playing?.stop();
    const mine = { stop: () => (rehearsal ? rehearsal.stop() : onEnd()) };
    playing = mine;
    offer("Stop");
    context ??= new AudioContext();
    const onBar = (/** @type {string} */ bar) => (place.textContent = bar);
    try {
      const [{ rehearse }] = await Promise.all([import("./rehearsal.js"), context.resume()]);
      if (playing !== mine) return;
      rehearsal = rehearse(context, figure, sound, readChoices(box), { onBar, onEnd });
    } catch {
      // The scripts that sound could not be fetched.
      if (playing === mine) onEnd();
    }
  }

  /** @param {Event} event */
  function onClick({ target }) {
    const pressed = /** @type {Element} */ (target).closest("button");
    if (pressed === button) {
      if (button.value === "stop") playing?.stop();
      else start();
    } else if (pressed) {
      pressed.ariaPressed = `${pressed.ariaPressed !== "true"}`;
      rehearsal?.change(readChoices(box));
    }
  }

  /** @param {Event} event */
  function onInput({ target }) {
    showTempo(box);
    if (rehearsal && target instanceof HTMLSelectElement) start();
    else rehearsal?.change(readChoices(box));
  }

  showTempo(box);
  box.addEventListener("click", onClick, { signal });
  box.addEventListener("input", onInput, { signal });
}
