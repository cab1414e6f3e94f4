/** A table in a box of its own is a stop for the keyboard as long as it is too wide for the box. */

/** @param {Document | Element} root */
export function enhance(root) {
  /** @type {NodeListOf<HTMLElement>} */
  const boxes = root.querySelectorAll(".table-scroll, .plan-rows");
  const watch = new ResizeObserver(() => {
    for (const box of boxes) box.tabIndex = box.scrollWidth > box.clientWidth ? 0 : -1;
  });
  for (const box of boxes) watch.observe(box);
  return () => {
    watch.disconnect();
    for (const box of boxes) box.tabIndex = 0;
  };
}
