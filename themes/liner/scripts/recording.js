/**
 * The recording: times of the page lead to their moment in it, and while it is heard the form plan
 * shows where one is. Nothing is asked of another host before the reader presses the button.
 */

/** How loud a file is at first, so that nobody is startled; the controls set it as one likes. */
const SOFT = 0.5;

/**
 * @param {Document} root
 * @returns {() => void}
 */
export function enhance(root) {
  const place = /** @type {HTMLElement | null} */ (root.querySelector(".recording-place"));
  return place ? setUp(root, place) : () => {};
}

/**
 * @param {Document} root
 * @param {HTMLElement} place keeps the player's room in the page
 */
function setUp(root, place) {
  const find = (/** @type {string} */ name) =>
    /** @type {any} */ (place.querySelector(`.recording-${name}`));
  const [player, cover, button, now, away] = ["player", "cover", "load", "now", "away"].map(find);
  const ending = new AbortController();
  const { signal } = ending;
  /** @type {((seconds: number) => void) | undefined} */
  let show;
  /** @type {HTMLMediaElement | null} */
  let media = place.querySelector("audio, video");
  /** @type {HTMLIFrameElement | null} */
  let frame = null;
  /** @type {HTMLElement | null} the link that was followed last */
  let asker = null;
  let [seconds, isUsed, isInView] = [0, false, true];

  /** Where its place has left the window, a player in use stays at the window's lower edge. */
  function dock() {
    const docked = isUsed && !isInView;
    if (docked !== away.hidden) return;
    place.style.height = docked ? `${place.getBoundingClientRect().height}px` : "";
    player.toggleAttribute("data-docked", docked);
    away.hidden = !docked;
  }

  function use() {
    isUsed = true;
    dock();
  }

  /** Silences the player and takes it from the window's edge; a host is left alone again. */
  function putAway() {
    isUsed = false;
    media?.pause();
    frame?.replaceWith(cover);
    frame = null;
    asker?.focus({ preventScroll: true });
    dock();
  }

  /** @param {HTMLMediaElement} heard */
  function listen(heard) {
    media = heard;
    heard.volume = SOFT;
    heard.addEventListener("play", async () => {
      use();
      show ??= (await import("./heard-place.js")).makeMarker(root, now);
    }, { signal });
    heard.addEventListener("timeupdate", () => show?.(heard.currentTime), { signal });
    heard.addEventListener("ended", () => show?.(NaN), { signal });
  }

  async function load() {
    const { makePlayer } = await import("./host-player.js");
    if (!cover.isConnected) return;
    const made = makePlayer(button.dataset, seconds);
    place.style.minHeight = `${place.getBoundingClientRect().height}px`;
    cover.replaceWith(made);
    made.focus();
    use();
    if (made instanceof HTMLMediaElement) {
      listen(made);
      start(made);
    } else frame = made;
  }

  /** @param {boolean} asked by a reader who wants to hear it, and does not only go elsewhere */
  async function jump(asked) {
    if (media) {
      media.currentTime = seconds;
      if (asked) start(media);
    } else if (frame) {
      const { addressAt } = await import("./host-player.js");
      frame.contentWindow?.location.replace(addressAt(button.dataset.address, seconds));
      use();
    } else {
      find("from").textContent = ` at ${clock(seconds)}`;
      if (asked) button.focus();
    }
  }

  /**
   * A time leads to its moment; a section of the drawn plan takes the recording along. A chart that
   * is played has the word to itself.
   */
  function follow(/** @type {MouseEvent} */ event) {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const target = /** @type {Element} */ (event.target);
    if (target.closest(".hearing-play")) media?.pause();
    const time = /** @type {HTMLElement | null} */ (target.closest("[data-seconds]"));
    const section = /** @type {SVGElement | null} */ (target.closest("svg [data-start]"));
    if (!time && !section) return;
    seconds = Number(time?.dataset.seconds ?? section?.dataset.start);
    if (time) {
      event.preventDefault();
      asker = time;
    }
    jump(Boolean(time ?? !section?.closest("a")));
  }

  root.addEventListener("click", follow, { signal });
  away.addEventListener("click", putAway, { signal });
  button?.addEventListener("click", load, { signal });
  if (button) button.hidden = false;
  if (media) listen(media);
  const watch = new IntersectionObserver(([{ isIntersecting }]) => {
    isInView = isIntersecting;
    dock();
  });
  watch.observe(place);
  return () => {
    ending.abort();
    watch.disconnect();
    putAway();
    show?.(NaN);
    if (button) button.hidden = true;
  };
}

/** @param {HTMLMediaElement} media the browser may refuse, and then its controls are there */
const start = (media) => media.play().catch(() => {});

/** @param {number} seconds */
const clock = (seconds) =>
  `${Math.floor(seconds / 60)}:${`${Math.floor(seconds % 60)}`.padStart(2, "0")}`;
