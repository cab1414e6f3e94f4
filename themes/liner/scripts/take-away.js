/**
 * The link to a chart is copied when it is followed. Where a browser lets no page copy, the link
 * leads to the chart, and the address of the page is the one to copy.
 */

const SHOWN_FOR = 5000;

/**
 * @param {Document | Element} root
 * @returns {() => void} takes the confirmations away again
 */
export function enhance(root) {
  const links = [...root.querySelectorAll(".take-away-link")].map(makeCopying);
  return () => links.forEach((leave) => leave());
}

/**
 * @param {Element} home holds the link; the confirmation is said at its end
 * @returns {() => void}
 */
function makeCopying(home) {
  const link = /** @type {HTMLAnchorElement} */ (home.querySelector("a"));
  const told = document.createElement("span");
  told.setAttribute("role", "status");
  home.append(told);
  /** @type {number | undefined} */
  let timer;

  /** @param {MouseEvent} event */
  const copy = async (event) => {
    if (!navigator.clipboard || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    clearTimeout(timer);
    told.textContent = "";
    try {
      await navigator.clipboard.writeText(link.href);
      told.textContent = " copied";
      timer = setTimeout(() => (told.textContent = ""), SHOWN_FOR);
    } catch {
      location.hash = link.hash;
    }
  };
  link.addEventListener("click", copy);
  return () => {
    clearTimeout(timer);
    link.removeEventListener("click", copy);
    told.remove();
  };
}
