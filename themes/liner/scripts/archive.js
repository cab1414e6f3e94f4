/**
 * The archive's index made to combine: what is pressed in it, words and tempo choose write-ups
 * together, and the address keeps them. Without this each value leads to a page of its own.
 */

import { open, openTitles, record } from "./archive-index.js";
import { count, item, pageLinks } from "./archive-list.js";
import { buttons, chosen, pressable } from "./archive-values.js";
import { filter, read, withWords, written } from "./facet-filter.js";

const AT_ONCE = 24;
const PAUSE = 200;
const SMALL = "(max-width: 40rem)";

/**
 * @typedef {import("./facet-filter.js").Archive} Archive
 * @typedef {import("./facet-filter.js").Asked} Asked
 */

/** @param {Document} root */
export function enhance(root) {
  const index = /** @type {HTMLElement | null} */ (root.querySelector(".facets[data-shelf]"));
  if (!index) return () => {};
  const page = new Page(root, index);
  return () => page.leave();
}

/** The page's parts, what is asked for now, and the last address that the back button leads to. */
class Page {
  /** @param {Document} root @param {HTMLElement} index */
  constructor(root, index) {
    const find = (/** @type {string} */ selector) =>
      /** @type {HTMLElement} */ (root.querySelector(selector));
    this.form = /** @type {HTMLFormElement} */ (find(".facet-form"));
    this.chosen = find(".facet-chosen");
    this.newest = find(".newest");
    this.matches = find(".matches");
    this.groups = [...index.querySelectorAll("details")];
    this.rows = [...index.querySelectorAll(".facet")].map((row) => new Row(row));
    this.ids = this.rows.map(({ id }) => id);
    this.asked = read("", []);
    this.settled = location.href;
    this.turn = 0;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.pause = undefined;
    this.listening = new AbortController();
    this.listen(index);
    this.form.hidden = this.chosen.hidden = false;
    if (matchMedia(SMALL).matches) this.groups.forEach((group) => (group.open = false));
    this.recall();
  }

  /** @param {HTMLElement} index */
  listen(index) {
    const by = this.listening;
    const settle = (/** @type {Event} */ event) => {
      event.preventDefault();
      this.take();
      this.go();
    };
    index.addEventListener("click", (event) => this.press(event), by);
    this.matches.addEventListener("click", (event) => this.turnTo(event), by);
    this.form.addEventListener("input", () => this.type(), by);
    this.form.addEventListener("submit", settle, by);
    this.form.addEventListener("change", settle, by);
    for (const group of this.groups) group.addEventListener("toggle", () => this.show(), by);
    addEventListener("popstate", () => this.recall(), by);
  }

  /** Shows what the address asks for. */
  recall() {
    this.asked = read(location.search, this.ids);
    this.settled = location.href;
    this.fill();
    this.show();
  }

  /** Goes to what is asked for now, as one step that the back button takes back. */
  go() {
    clearTimeout(this.pause);
    const address = location.pathname + written(this.asked);
    if (new URL(address, this.settled).href !== this.settled) {
      history.replaceState(null, "", this.settled);
      history.pushState(null, "", address);
      this.settled = location.href;
    }
    this.fill();
    return this.show();
  }

  async show() {
    const turn = ++this.turn;
    if (!written({ ...this.asked, page: 1 })) {
      this.showAll();
      return;
    }
    try {
      await this.find(turn);
    } catch {
      if (turn === this.turn) this.say("The index cannot be loaded here.");
    }
  }

  /** Finds and lists what is asked for, unless something else is asked meanwhile. @param {number} turn */
  async find(turn) {
    const { asked } = this;
    const seen = this.rows.filter((row) => row.isOpen || asked.chosen.has(row.id));
    const [archive, titles] = await Promise.all([
      open(seen.map(({ id }) => id)),
      asked.words ? openTitles() : null,
    ]);
    const { found, counts } = filter(archive, asked, titles && withWords(titles, asked.words));
    const last = Math.max(1, Math.ceil(found.length / AT_ONCE));
    asked.page = Math.min(asked.page, last);
    const numbers = found.slice((asked.page - 1) * AT_ONCE, asked.page * AT_ONCE);
    const records = await Promise.all(numbers.map(record));
    if (turn !== this.turn) return;
    for (const row of seen) row.show(archive, counts(row.id), asked);
    this.showChosen(chosen(archive, asked));
    const items = records.map((one, n) => item(one, archive, numbers[n]));
    /** @type {HTMLElement} */ (this.matches.querySelector(".crate")).innerHTML = items.join("");
    const pages = /** @type {HTMLElement} */ (this.matches.querySelector(".match-pages"));
    pages.innerHTML = pageLinks(asked, last);
    pages.hidden = !pages.innerHTML;
    this.newest.hidden = true;
    this.matches.hidden = false;
    this.say(count(found.length, asked.page, last));
  }

  showAll() {
    this.newest.hidden = false;
    this.matches.hidden = true;
    for (const row of this.rows) row.showAll();
    this.showChosen("");
    this.say("");
  }

  /** @param {string} html */
  showChosen(html) {
    const list = /** @type {HTMLElement} */ (this.chosen.querySelector("ul"));
    if (!exchange(list, html)) this.field("words").focus();
    list.hidden = !html;
  }

  /** @param {string} words */
  say(words) {
    /** @type {Element} */ (this.chosen.querySelector("p")).textContent = words;
  }

  /** @param {Event} event */
  press(event) {
    const pressed = /** @type {Element} */ (event.target).closest("button");
    const { leave, facet = "", value = "" } = pressed?.dataset ?? {};
    if (!leave && !facet) return;
    if (leave === "all") this.asked = read("", []);
    else if (facet === "words") this.asked.words = "";
    else if (facet === "tempo") this.asked.tempo = pressed?.ariaPressed === "false" ? range(value) : [null, null];
    else this.toggle(facet, value);
    this.asked.page = 1;
    this.go();
  }

  /** @param {string} id @param {string} address */
  toggle(id, address) {
    const values = this.asked.chosen.get(id) ?? new Set();
    if (!values.delete(address)) values.add(address);
    if (values.size) this.asked.chosen.set(id, values);
    else this.asked.chosen.delete(id);
  }

  /** Turns to another page of what was found. @param {MouseEvent} event */
  turnTo(event) {
    const link = /** @type {Element} */ (event.target).closest("a");
    if (!link?.dataset.page || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    this.asked.page = Number(link.dataset.page);
    this.go().then(() => {
      this.matches.scrollIntoView();
      /** @type {HTMLElement | null} */ (this.matches.querySelector("h3 a"))?.focus({ preventScroll: true });
    });
  }

  /** Follows what is being typed; the address does as well, without a step for the back button. */
  type() {
    clearTimeout(this.pause);
    this.pause = setTimeout(() => {
      this.take();
      history.replaceState(null, "", location.pathname + written(this.asked));
      this.show();
    }, PAUSE);
  }

  /** Takes over what stands in the fields. */
  take() {
    const number = (/** @type {string} */ name) => {
      const text = this.field(name).value;
      return /^\d{1,3}$/.test(text) ? Number(text) : null;
    };
    const words = this.field("words").value.trim();
    this.asked = { ...this.asked, words, tempo: [number("from"), number("to")], page: 1 };
  }

  fill() {
    this.field("words").value = this.asked.words;
    this.field("from").value = String(this.asked.tempo[0] ?? "");
    this.field("to").value = String(this.asked.tempo[1] ?? "");
  }

  /** @param {string} name */
  field(name) {
    return /** @type {HTMLInputElement} */ (this.form.elements.namedItem(name));
  }

  /** Takes all of it away again. */
  leave() {
    this.listening.abort();
    clearTimeout(this.pause);
    this.turn++;
    this.showAll();
    for (const row of this.rows) row.leave();
    if (this.groups.length) this.groups[0].open = true;
    this.form.hidden = this.chosen.hidden = true;
  }
}

/** A facet in the page. */
class Row {
  /** @param {Element} row */
  constructor(row) {
    this.row = /** @type {HTMLElement} */ (row);
    this.id = this.row.dataset.facet ?? "";
    this.list = /** @type {HTMLElement} */ (row.querySelector(".facet-values"));
    this.links = this.list.innerHTML;
    this.rest = row.querySelector(".facet-rest")?.outerHTML ?? "";
    this.showAll();
  }

  get isOpen() {
    return !!this.row.closest("details")?.open;
  }

  showAll() {
    exchange(this.list, pressable(this.links));
  }

  /** @param {Archive} archive @param {number[]} counts @param {Asked} asked */
  show(archive, counts, asked) {
    const facet = archive.facets.get(this.id);
    if (facet) exchange(this.list, buttons(facet, counts, asked, this.rest));
  }

  leave() {
    this.list.innerHTML = this.links;
  }
}

/**
 * Exchanges what stands in a list. A value that stays keeps its button, so that a press that has
 * begun is not lost; what had the focus and goes leaves it to the first button.
 *
 * @param {HTMLElement} list
 * @param {string} html
 * @returns {boolean} false where the focus was in the list, which has no button any more
 */
function exchange(list, html) {
  const hadFocus = list.contains(document.activeElement);
  const fresh = document.createElement("ul");
  fresh.innerHTML = html;
  const old = new Map([...list.children].map((item) => [nameOf(item), item]));
  const items = [...fresh.children].map((item) => adopted(old.get(nameOf(item)), item));
  const kept = new Set(items);
  for (const item of [...list.children]) if (!kept.has(item)) item.remove();
  items.forEach((item, n) => {
    if (list.children[n] !== item) list.insertBefore(item, list.children[n] ?? null);
  });
  if (!hadFocus || list.contains(document.activeElement)) return true;
  const first = list.querySelector("button");
  first?.focus();
  return !!first;
}

/** What tells an item of a list from the others. @param {Element} item */
function nameOf(item) {
  const { facet, value, leave } = item.querySelector("button")?.dataset ?? {};
  return JSON.stringify([item.className, facet, value, leave]);
}

/** The item that stood there, brought to the state of a new one. @param {Element | undefined} old @param {Element} item */
function adopted(old, item) {
  const [button, other] = [old?.querySelector("button"), item.querySelector("button")];
  if (!old || !button || !other) return item;
  button.ariaPressed = other.ariaPressed;
  const [count, now] = [old, item].map((one) => one.querySelector(".facet-count"));
  if (count && now) count.textContent = now.textContent;
  return old;
}

/** @param {string} text @returns {Asked["tempo"]} */
const range = (text) => read(`?tempo=${text}`, []).tempo;

enhance(document);
document.documentElement.dataset.filing = "";
