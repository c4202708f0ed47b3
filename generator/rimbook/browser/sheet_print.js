/**
 * Printing one piece of a page: it is named at the root of the page, and the style sheet hides all else on
 * paper. No window is opened, so no browser stands in the way.
 */

const NAME = "data-rb-print";

/**
 * @param {"ticket" | "picks"} paper as in `data-rb-paper`
 */
export function printOnly(paper) {
  const root = document.documentElement;
  root.setAttribute(NAME, paper);
  print();
  // A phone goes on with the page while it prints, so the name stays until a hand or a key is back on it.
  const over = new AbortController();
  const end = (/** @type {Event} */ event) => {
    if (event instanceof PointerEvent && event.type === "pointermove" && event.pointerType !== "mouse") return;
    root.removeAttribute(NAME);
    over.abort();
  };
  for (const type of ["pointerdown", "pointermove", "keydown"]) addEventListener(type, end, { signal: over.signal });
}
