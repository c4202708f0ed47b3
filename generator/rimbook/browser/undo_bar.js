/** The line at the foot of a page that says what was done, with the button that undoes it. */

import { el } from "./dom.js";

/** @param {{undo: () => boolean}} store */
export function undoBar(store) {
  const said = el("p", { class: "rb-prices-said", role: "status" });
  const undo = el("button", { type: "button", class: "rb-button", hidden: true }, "Undo");
  const say = (/** @type {string} */ says, /** @type {boolean} */ canUndo) => {
    said.textContent = says;
    undo.hidden = !canUndo;
  };
  undo.addEventListener("click", () => {
    const done = store.undo();
    say(done ? "Undone." : "That cannot be undone any more: something else was changed since.", false);
  });
  return { element: el("div", { class: "rb-prices-bar" }, said, undo), say };
}
