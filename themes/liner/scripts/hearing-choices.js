/** What the controls under a caption say, read and shown. */

const VOLUME = "liner.volume";

/** @type {(box: HTMLFieldSetElement, name: string) => any} */
const field = (box, name) => box.elements.namedItem(name);

/** @type {(box: HTMLFieldSetElement) => Choices} */
export function readChoices(box) {
  const number = (/** @type {string} */ name) => Number(field(box, name).value);
  const isOn = (/** @type {string} */ name) => field(box, name).checked;
  const pressed = (/** @type {string} */ name) =>
    [...box.querySelectorAll(`[name=${name}]`)].map(({ ariaPressed }) => ariaPressed === "true");
  const [muted, alone] = [pressed("mute"), pressed("solo")];
  return {
    first: number("from"),
    last: number("to"),
    tempo: number("tempo") / 100,
    volume: number("volume") / 100,
    heard: muted.map((mute, place) => (alone.includes(true) ? alone[place] : !mute)),
    looping: isOn("loop"),
    counting: isOn("count"),
    clicking: isOn("click"),
  };
}

/** @param {HTMLFieldSetElement} box */
export function showTempo(box) {
  const slider = field(box, "tempo");
  const text = `${slider.value} %`;
  slider.ariaValueText = text;
  /** @type {HTMLElement} */ (box.querySelector(".hearing-tempo")).textContent = text;
}

/**
 * Keeps one volume for all charts, and on the device for the reader's next page.
 *
 * @param {HTMLFieldSetElement[]} boxes @param {AbortSignal} signal
 */
export function shareVolume(boxes, signal) {
  const sliders = boxes.map((box) => field(box, "volume"));
  const set = (/** @type {string} */ volume) => {
    for (const slider of sliders) {
      slider.value = volume;
      slider.ariaValueText = `${slider.value} %`;
    }
  };
  /** @param {Event} event */
  const onInput = ({ target }) => {
    const { value } = /** @type {HTMLInputElement} */ (target);
    set(value);
    tryStorage(() => localStorage.setItem(VOLUME, value));
  };
  const kept = tryStorage(() => localStorage.getItem(VOLUME));
  if (kept) set(kept);
  for (const slider of sliders) slider.addEventListener("input", onInput, { signal });
}

/** A browser may refuse to keep anything. @type {<T>(use: () => T) => T | undefined} */
function tryStorage(use) {
  try {
    return use();
  } catch {
    return undefined;
  }
}
