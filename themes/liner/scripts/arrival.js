/** Lights up the bars that a link named, `?bars=5+6#chart-verse`, and brings them into view. */

import { markBars } from "./pointer.js";

export function enhance() {
  const bars = new URLSearchParams(location.search).get("bars") ?? "";
  const figure = /** @type {HTMLElement | null} */ (document.querySelector("figure:target"));
  if (!figure || /[^\d ]/.test(bars)) return () => {};
  const listening = new AbortController();
  const mark = () => markBars(figure, { bars });
  mark()?.scrollIntoView({ block: "center" });
  addEventListener("resize", mark, listening);
  figure.addEventListener("redrawn", mark, listening);
  return () => {
    listening.abort();
    markBars(figure, {});
  };
}
