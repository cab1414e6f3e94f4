/**
 * What the preview adds to a page while it is written: it is loaded anew when it was made anew,
 * at the same place, and shows what is wrong with it. Published pages never have this script.
 *
 * @typedef {{page: string, faults: string[], more: number, quiet: string[], quietly: string}} State
 */
(() => {
  const script = /** @type {HTMLScriptElement} */ (document.currentScript);
  const KEPT = `sitegen preview ${location.pathname}`;
  /** Places in the text that a page has again after most edits. */
  const PLACES = ":is(main, article) :is(h1, h2, h3, h4, h5, h6, figure, section, p, li)[id]";
  const STYLE = `
    :host { all: initial; }
    * { box-sizing: border-box; }
    .board { position: fixed; inset: auto 0 0 0; z-index: 2147483647; color: #fdf6ea;
      font: 15px/1.45 system-ui, sans-serif; pointer-events: none; }
    .sheet, .quiet { pointer-events: auto; }
    .remarks { display: flow-root; }
    .sheet { background: #211d18; border-top: 4px solid #ee8a5f; }
    .head { display: flex; align-items: center; gap: 12px; padding: 8px 16px; }
    .count { margin: 0; flex: 1; font-weight: 600; }
    button, summary { font: inherit; color: #fdf6ea; background: #3a332b; cursor: pointer;
      border: 1px solid #a3978a; border-radius: 4px; padding: 6px 14px; min-height: 36px; }
    summary { display: inline-block; }
    :focus-visible { outline: 3px solid #ffd27a; outline-offset: 2px; }
    .frames { max-height: 46vh; overflow-y: auto; padding: 0 16px 12px; }
    .frame { font: 13px/1.5 ui-monospace, "DejaVu Sans Mono", monospace; margin: 8px 0 0;
      padding: 8px 0 0; border-top: 1px solid #5b5147; }
    .said { white-space: pre-wrap; overflow-wrap: anywhere; }
    .lines { overflow-x: auto; white-space: pre; tab-size: 4; padding: 4px 0; }
    .quiet { float: right; margin: 0 8px 8px; max-width: min(100%, 60rem); background: #211d18;
      border: 1px solid #a3978a; border-radius: 4px; }
    .quiet[open] { float: none; margin-left: auto; padding-bottom: 4px; }
    .quiet summary { border: 0; background: none; font-size: 13px; }
    [hidden] { display: none; }
    @media print { .board { display: none; } }
  `;

  /** @type {State | undefined} */
  let shown;
  /** @type {EventSource | undefined} */
  let stream;
  let hidden = false;
  const host = document.createElement("div");
  const root = host.attachShadow({ mode: "open" });

  function listen() {
    if (stream || document.hidden) return;
    const query = new URLSearchParams({ page: decoded(location.pathname) });
    stream = new EventSource(`${new URL("events", script.src).pathname}?${query}`);
    stream.addEventListener("state", (event) => take(JSON.parse(event.data)));
  }

  /** A browser holds few connections to one server: a page that nobody sees gives its own back. */
  function rest() {
    stream?.close();
    stream = undefined;
  }

  /** @param {string} path */
  function decoded(path) {
    try {
      return decodeURIComponent(path);
    } catch {
      return path;
    }
  }

  /** @param {State} state */
  function take(state) {
    if (state.page !== script.dataset.state) {
      rest();
      keepPlace();
      location.reload();
      return;
    }
    if (JSON.stringify(shown?.faults) !== JSON.stringify(state.faults)) hidden = false;
    shown = state;
    draw(state);
    document.documentElement.dataset.previewed = String(state.faults.length);
  }

  /** @param {State} state */
  function draw(state) {
    const wasOpen = root.querySelector("details")?.open ?? false;
    const board = element("div", "board");
    if (state.quiet.length) board.append(quietly(state, wasOpen));
    if (state.faults.length) board.append(sheet(state));
    const style = element("style", "");
    style.textContent = STYLE;
    root.replaceChildren(style, board);
    if (!host.isConnected) document.body.append(host);
    for (const lines of root.querySelectorAll(".lines")) showCaret(lines);
  }

  /** @param {State} state */
  function sheet(state) {
    const sheet = element("section", "sheet");
    sheet.setAttribute("aria-label", "Faults in this page");
    const number = state.faults.length + state.more;
    const count = element("p", "count", number === 1 ? "1 fault" : `${number} faults`);
    count.setAttribute("role", "alert");
    const button = element("button", "", hidden ? "Show" : "Hide");
    button.setAttribute("aria-expanded", String(!hidden));
    button.setAttribute("aria-controls", "frames");
    const frames = element("div", "frames");
    frames.id = "frames";
    frames.tabIndex = 0;
    frames.setAttribute("role", "group");
    frames.setAttribute("aria-label", "What is wrong, and where");
    frames.hidden = hidden;
    frames.append(...state.faults.map(frame));
    if (state.more) frames.append(element("p", "said", `… and ${state.more} more`));
    button.addEventListener("click", () => toggle(!hidden));
    sheet.addEventListener("keydown", (event) => {
      if (event.key === "Escape" && !hidden) toggle(true);
    });
    const head = element("div", "head");
    head.append(count, button);
    sheet.append(head, frames);
    return sheet;
  }

  /** @param {boolean} away */
  function toggle(away) {
    hidden = away;
    if (shown) draw(shown);
    root.querySelector("button")?.focus();
  }

  /**
   * @param {State} state
   * @param {boolean} isOpen
   */
  function quietly(state, isOpen) {
    const strip = /** @type {HTMLDetailsElement} */ (element("details", "quiet"));
    strip.open = isOpen;
    const frames = element("div", "frames");
    frames.tabIndex = 0;
    frames.setAttribute("role", "group");
    frames.setAttribute("aria-label", "What to look at again");
    frames.append(...state.quiet.map(frame));
    strip.append(element("summary", "", state.quietly), frames);
    const part = element("section", "remarks");
    part.setAttribute("aria-label", "Warnings and notes");
    part.append(strip);
    return part;
  }

  /**
   * The frame as the terminal has it: what is said wraps, the lines of the file keep their columns.
   * @param {string} text
   */
  function frame(text) {
    const whole = element("div", "frame");
    /** @type {HTMLElement | undefined} */
    let lines;
    for (const line of text.split("\n")) {
      if (/^ *\d* \|/.test(line)) {
        lines ??= whole.appendChild(element("div", "lines"));
        lines.append(`${line}\n`);
      } else {
        lines = undefined;
        whole.append(element("div", "said", `${line}\n`));
      }
    }
    return whole;
  }

  /**
   * Brings the caret into view on a narrow screen, and lets the keyboard scroll what is too wide.
   * @param {Element} lines
   */
  function showCaret(lines) {
    if (lines.scrollWidth <= lines.clientWidth) return;
    lines.setAttribute("tabindex", "0");
    lines.setAttribute("role", "group");
    lines.setAttribute("aria-label", "The place in the file");
    const rows = (lines.textContent ?? "").split("\n");
    const longest = Math.max(...rows.map((row) => row.length));
    const caret = Math.max(...rows.map((row) => row.indexOf("^")));
    lines.scrollLeft = (caret / longest) * lines.scrollWidth - lines.clientWidth / 2;
  }

  /**
   * @param {string} name
   * @param {string} kind
   * @param {string} [text]
   */
  function element(name, kind, text = "") {
    const made = document.createElement(name);
    made.className = kind;
    made.textContent = text;
    return made;
  }

  function keepPlace() {
    const above = [...document.querySelectorAll(PLACES)].findLast((place) =>
      place.getClientRects().length && place.getBoundingClientRect().top <= innerHeight / 3);
    const kept = {
      y: scrollY,
      id: above?.id,
      top: above?.getBoundingClientRect().top,
      open: [...document.querySelectorAll("details")].map((one) => one.open),
      focus: document.activeElement?.id,
    };
    sessionStorage.setItem(KEPT, JSON.stringify(kept));
    // The browser would go to the same height instead, and later than we do.
    history.scrollRestoration = "manual";
  }

  function findPlace() {
    const text = sessionStorage.getItem(KEPT);
    if (text === null) return;
    sessionStorage.removeItem(KEPT);
    history.scrollRestoration = "auto";
    const kept = JSON.parse(text);
    const unfold = () => {
      const details = [...document.querySelectorAll("details")];
      if (details.length !== kept.open.length) return;
      details.forEach((one, place) => { one.open = kept.open[place]; });
    };
    unfold();
    if (kept.focus) document.getElementById(kept.focus)?.focus({ preventScroll: true });
    let moved = false;
    const go = () => {
      const place = kept.id && document.getElementById(kept.id);
      const top = place ? scrollY + place.getBoundingClientRect().top - kept.top : kept.y;
      if (!moved) scrollTo({ top, behavior: "instant" });
    };
    go();
    // Fonts and pictures move the text until they are there, unless the reader has gone on.
    for (const act of ["wheel", "touchstart", "keydown", "pointerdown"]) {
      addEventListener(act, () => { moved = true; }, { once: true, passive: true });
    }
    addEventListener("load", go, { once: true });
    document.fonts.ready.then(go);
    // So do a theme's scripts with the controls that they add.
    const watch = new MutationObserver(() => {
      watch.disconnect();
      unfold();
      go();
    });
    watch.observe(document.documentElement, { attributeFilter: ["data-enhanced"] });
  }

  findPlace();
  document.addEventListener("visibilitychange", () => (document.hidden ? rest() : listen()));
  addEventListener("pagehide", rest);
  addEventListener("pageshow", listen);
})();
