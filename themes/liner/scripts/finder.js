/**
 * What every way of asking for passages has in common: a form whose question stands in the address,
 * a line that says how many were found, a list that grows.
 */

import { showPassages } from "./results.js";

const AT_ONCE = 12;

/**
 * @typedef {import("./results.js").Passage} Passage
 * @typedef {object} Answer
 * @property {string} said how many there are, or why there are none
 * @property {Passage[]} passages
 */

/**
 * Makes a form work.
 *
 * @param {HTMLFormElement} form
 * @param {string[]} names the fields that make up the question, the first of them without which none
 *   is asked
 * @param {() => Promise<Answer>} answer
 * @param {() => void} [shown] is called when fields were filled in from the address
 * @param {(fields: Record<string, string>) => boolean} [isAsked] whether there is a question
 */
export function makeFinder(form, names, answer, shown = () => {}, isAsked = (fields) => !!fields[names[0]]) {
  const section = /** @type {HTMLElement} */ (form.parentElement);
  const said = /** @type {Element} */ (section.querySelector(".finder-said"));
  const list = /** @type {Element} */ (section.querySelector(".found"));
  const more = /** @type {HTMLElement} */ (section.querySelector(".finder-more"));
  const heading = /** @type {Element} */ (section.querySelector("h2"));
  const listening = new AbortController();
  let turn = 0;
  /** @type {Passage[]} */
  let left = [];

  const showMore = async () => {
    const own = turn;
    const next = left.slice(0, AT_ONCE);
    const part = document.createElement("ol");
    await showPassages(part, next);
    if (own !== turn) return;
    left = left.slice(AT_ONCE);
    const first = part.firstElementChild;
    const isMore = list.childElementCount > 0;
    list.append(...part.children);
    more.hidden = !left.length;
    if (isMore) first?.querySelector("a")?.focus();
  };
  const ask = async () => {
    const own = ++turn;
    if (!isAsked(fieldsOf(form, names))) {
      [said.textContent, list.innerHTML, more.hidden] = ["", "", true];
      return;
    }
    try {
      const found = await answer();
      if (own !== turn) return;
      [left, list.innerHTML, more.hidden] = [found.passages, "", true];
      if (left.length) await showMore();
      if (own === turn) said.textContent = found.said;
    } catch {
      if (own === turn) said.textContent = "The index cannot be loaded here.";
    }
  };
  const recall = () => {
    const asked = new URLSearchParams(location.search);
    for (const name of names) {
      const field = form.elements.namedItem(name);
      if (field instanceof HTMLInputElement && field.type === "checkbox") {
        field.checked = asked.has(name);
      } else if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) {
        if (asked.has(name) || field instanceof HTMLInputElement) field.value = asked.get(name) ?? "";
      }
    }
    shown();
    ask();
  };

  form.hidden = false;
  form.addEventListener(
    "submit",
    (event) => {
      event.preventDefault();
      const address = new URL(location.href);
      address.search = `${new URLSearchParams(fieldsOf(form, names))}`;
      address.hash = heading.id;
      if (address.href !== location.href) history.pushState(null, "", address);
      ask();
    },
    listening,
  );
  more.addEventListener("click", showMore, listening);
  addEventListener("popstate", recall, listening);
  recall();
  return () => {
    listening.abort();
    turn++;
    form.hidden = more.hidden = true;
    [said.textContent, list.innerHTML] = ["", ""];
  };
}

/** What is filled in. @param {HTMLFormElement} form @param {string[]} names */
export function fieldsOf(form, names) {
  /** @type {Record<string, string>} */
  const fields = {};
  for (const name of names) {
    const field = form.elements.namedItem(name);
    if (field instanceof HTMLInputElement && field.type === "checkbox") {
      if (field.checked) fields[name] = "yes";
    } else if (field instanceof HTMLInputElement || field instanceof HTMLSelectElement) {
      if (field.value.trim()) fields[name] = field.value.trim();
    }
  }
  return fields;
}
