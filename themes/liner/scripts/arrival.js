/** Lights up the bars that a link named, `?bars=5+6#chart-verse`, and brings them into view. */

import { markBars } from "./pointer.js";

export function enhance() {
  const bars = new URLSearchParams(location.search).get("bars") ?? "";
  const figure = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!figure || !/^\d+( \d+)*$/.test(bars)) return () => {};
  const mark = () => markBars(figure, { bars });
  mark()?.scrollIntoView({ block: "center" });
  addEventListener("resize", mark);
  figure.addEventListener("redrawn", mark);
  return () => {
    removeEventListener("resize", mark);
    figure.removeEventListener("redrawn", mark);
    markBars(figure, {});
  };
}
