/**
 * A small keyboard from C4 to F5, for the pointer, touch and the letters of a computer's keyboard.
 * Each key is a button, so that it can be reached and pressed as any other.
 */

const LOWEST = 60;
const NAMES = ["C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭", "A", "B♭", "B"];
const BLACK = [1, 3, 6, 8, 10];
// By where a key lies and not by its letter, which differs from country to country.
const PLACES =
  "KeyA KeyW KeyS KeyE KeyD KeyF KeyT KeyG KeyY KeyH KeyU KeyJ KeyK KeyO KeyL KeyP Semicolon Quote".split(" ");

/**
 * @param {HTMLElement} home
 * @param {(midi: number, when: number) => void} play is told of every key, with the time in ms
 * @param {AbortSignal} signal
 */
export function makeKeyboard(home, play, signal) {
  const keys = PLACES.map((_, n) => {
    const midi = LOWEST + n;
    const key = document.createElement("button");
    const isBlack = BLACK.includes(midi % 12);
    key.type = "button";
    key.className = isBlack ? "key key-black" : "key";
    key.textContent = NAMES[midi % 12];
    key.setAttribute("aria-label", NAMES[midi % 12] + (Math.floor(midi / 12) - 1));
    return key;
  });
  /** @param {number} n @param {number} when */
  const press = (n, when) => {
    play(LOWEST + n, when);
    keys[n].classList.add("key-down");
    setTimeout(() => keys[n].classList.remove("key-down"), 150);
  };
  home.replaceChildren(...keys);
  keys.forEach((key, n) => {
    // The pointer plays at once; a click without one comes from Enter, Space or a screen reader.
    key.addEventListener("pointerdown", (event) => press(n, event.timeStamp), { signal });
    key.addEventListener("click", (event) => event.detail || press(n, event.timeStamp), { signal });
  });
  home.closest("details")?.addEventListener(
    "keydown",
    (event) => {
      const n = PLACES.indexOf(event.code);
      const isPlain = !event.repeat && !event.ctrlKey && !event.metaKey && !event.altKey;
      if (n < 0 || !isPlain) return;
      event.preventDefault();
      press(n, event.timeStamp);
    },
    { signal },
  );
  return () => home.replaceChildren();
}
