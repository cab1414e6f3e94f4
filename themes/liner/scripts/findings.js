/**
 * Findings point at their bars while they have the pointer or the focus, and for good once they
 * are pressed. What draws the marks is loaded when it is first needed.
 */

/** @param {Document | Element} root */
export function enhance(root) {
  const undo = [...root.querySelectorAll("ul.findings")].map(setUp);
  return () => undo.forEach((step) => step());
}

/** @param {Element} list */
function setUp(list) {
  const figure = /** @type {HTMLElement} */ (list.closest("figure"));
  const listening = new AbortController();
  const spans = [...list.querySelectorAll("li[data-bars] > .finding")];
  const buttons = spans.map(replace);
  /** @type {EventTarget | null} */
  let pointed = null;
  const isPressed = (/** @type {Element} */ button) => button.ariaPressed === "true";

  /** Marks what is pointed at, else what is pressed. */
  const mark = async (show = false) => {
    const { markBars } = await import("./pointer.js");
    const button = buttons.find((each) => each === pointed) ?? buttons.find(isPressed);
    const first = markBars(figure, button?.parentElement?.dataset ?? {});
    if (show) first?.scrollIntoView({ block: "nearest" });
  };
  /** @param {Event} event */
  const point = ({ type, target }) => {
    const press = type === "click";
    const button = /** @type {Element} */ (target).closest("button");
    for (const each of press ? buttons : []) {
      each.ariaPressed = `${each === button && !isPressed(each)}`;
    }
    pointed = /over|in$/.test(type) ? button : null;
    mark(press);
  };
  for (const type of ["pointerover", "pointerout", "focusin", "focusout", "click"]) {
    list.addEventListener(type, point, listening);
  }
  const again = () => buttons.some(isPressed) && mark();
  figure.addEventListener("redrawn", again, listening);
  addEventListener("resize", again, listening);
  return () => {
    listening.abort();
    pointed = null;
    buttons.forEach((button, n) => button.replaceWith(spans[n]));
    for (const button of buttons) button.ariaPressed = "false";
    again();
  };
}

/** @param {Element} span */
function replace(span) {
  const button = document.createElement("button");
  button.className = span.className;
  button.innerHTML = span.innerHTML;
  Object.assign(button, { type: "button", ariaPressed: "false", ariaDescription: "marks the bars" });
  span.replaceWith(button);
  return button;
}
