/**
 * What every way of asking for passages has in common: a form whose question stands in the address,
 * a line that says how many were found, a list that grows.
 */

import { ask as askWorker } from "./asking.js";

/**
 * @typedef {object} How
 * @property {string} way as the worker knows it
 * @property {string[]} names the fields that make up the question
 * @property {() => void} [shown] is called when fields were filled in from the address
 * @property {(fields: Record<string, string>) => boolean} [isAsked] whether there is a question;
 *   without it, the first field says so
 * @property {(fields: Record<string, string>) => void} [understood] is called with what was read
 */

/**
 * Makes a form work.
 *
 * @param {HTMLFormElement} form
 * @param {How} how
 */
export function makeFinder(form, { way, names, shown = () => {}, isAsked, understood = () => {} }) {
  const section = /** @type {HTMLElement} */ (form.parentElement);
  const said = /** @type {Element} */ (section.querySelector(".finder-said"));
  const list = /** @type {Element} */ (section.querySelector(".found"));
  const more = /** @type {HTMLElement} */ (section.querySelector(".finder-more"));
  const heading = /** @type {Element} */ (section.querySelector("h2"));
  const listening = new AbortController();
  let turn = 0;
  let next = 0;

  /** @param {import("./asking.js").Answer} answer */
  const show = ({ items, count, next: after }) => {
    list.insertAdjacentHTML("beforeend", items);
    next = after;
    more.hidden = next >= count;
  };
  const showMore = async () => {
    const own = turn;
    const answer = await askWorker(way, null, next).catch(() => undefined);
    if (own !== turn || !answer) return;
    const before = list.childElementCount;
    show(answer);
    list.children[before]?.querySelector("a")?.focus();
  };
  const ask = async () => {
    const own = ++turn;
    const fields = fieldsOf(form, names);
    if (!(isAsked ? isAsked(fields) : fields[names[0]])) {
      [said.textContent, list.innerHTML, more.hidden] = ["", "", true];
      return;
    }
    try {
      const answer = await askWorker(way, fields);
      if (own !== turn) return;
      list.innerHTML = "";
      show(answer);
      said.textContent = answer.said;
      if (answer.understood) understood(fields);
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
function fieldsOf(form, names) {
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
