/** The index files of the archive: each is loaded once, when it is first needed. */

/** @type {Map<string, Promise<any>>} */
const loaded = new Map();
const told = { shelf: "" };

/** Says where the files lie, where there is no page to say it. @param {string} shelf */
export const standBy = (shelf) => (told.shelf = shelf);

/** Where the files lie; the top of the site is above it. */
export function shelf() {
  told.shelf ||= /** @type {HTMLElement} */ (document.querySelector("[data-shelf]")).dataset.shelf ?? "";
  return told.shelf;
}

export const top = () => shelf().replace(/shelf\/$/, "");

/**
 * The contents of an index file, asked for once; a failed request may be tried again.
 *
 * @param {string} name
 * @returns {Promise<any>}
 */
export function load(name) {
  const known = loaded.get(name);
  if (known) return known;
  const asked = fetch(shelf() + name).then((answer) => {
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    return answer.json();
  });
  asked.catch(() => loaded.delete(name));
  loaded.set(name, asked);
  return asked;
}

/**
 * Something made of an index file when it is first asked for; after a failure it is made again.
 *
 * @template T
 * @param {() => Promise<T>} make
 * @returns {() => Promise<T>}
 */
export function once(make) {
  /** @type {Promise<T> | undefined} */
  let made;
  return () => {
    made ??= make();
    made.catch(() => (made = undefined));
    return made;
  };
}
