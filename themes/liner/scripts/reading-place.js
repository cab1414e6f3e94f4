/**
 * Marks the place that is being read: in the index of sections, and in every form plan the
 * sections of the song that the place speaks of.
 */

const INDEX = ".tracks-numbered a";
const PLANS = ".map a, .drawing a, .plan-rows th a";
/** A place counts as reached when it stands in the upper part of the window. */
const REACHED = "9999999px 0px -65% 0px";

/** @typedef {HTMLAnchorElement | SVGAElement} Anchor */

/**
 * @param {Document} root
 * @returns {() => void}
 */
export function enhance(root) {
  const sections = linksByTarget(root, INDEX);
  const plans = linksByTarget(root, PLANS);
  const places = inOrder(new Set([...sections.keys(), ...plans.keys()]));
  /** @type {Set<Element>} */
  const reached = new Set();

  const watch = new IntersectionObserver((changes) => {
    for (const { target, isIntersecting } of changes) {
      if (isIntersecting) reached.add(target);
      else reached.delete(target);
    }
    const before = places.filter((place) => reached.has(place));
    const section = before.findLast((place) => sections.has(place));
    const told = before.findLast((place) => plans.has(place));
    mark(sections, section);
    mark(plans, told && section && isAfter(section, told) ? undefined : told);
  }, { rootMargin: REACHED });

  for (const place of places) watch.observe(place);
  return () => {
    watch.disconnect();
    mark(sections, undefined);
    mark(plans, undefined);
  };
}

/**
 * Returns links that lead to a place of this page, by that place.
 * @param {Document} root
 * @param {string} selector
 * @returns {Map<Element, Anchor[]>}
 */
function linksByTarget(root, selector) {
  /** @type {Map<Element, Anchor[]>} */
  const links = new Map();
  for (const link of /** @type {NodeListOf<Anchor>} */ (root.querySelectorAll(selector))) {
    const href = link.getAttribute("href") ?? "";
    const place = href.startsWith("#") && root.getElementById(decodeURIComponent(href.slice(1)));
    if (place) links.set(place, [...(links.get(place) ?? []), link]);
  }
  return links;
}

/** @param {Iterable<Element>} places */
function inOrder(places) {
  return [...places].sort((one, other) => (isAfter(one, other) ? 1 : -1));
}

/**
 * @param {Element} one
 * @param {Element} other
 */
function isAfter(one, other) {
  return Boolean(one.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_PRECEDING);
}

/**
 * Marks the links to `place` and no others.
 * @param {Map<Element, Anchor[]>} links
 * @param {Element | undefined} place
 */
function mark(links, place) {
  for (const [target, anchors] of links) {
    for (const anchor of anchors) {
      if (target === place) anchor.setAttribute("aria-current", "location");
      else anchor.removeAttribute("aria-current");
    }
  }
}
