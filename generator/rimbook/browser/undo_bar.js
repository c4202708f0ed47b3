/**
 * The line at the foot of a page that says what was done, with the button that undoes it. Both go as soon as
 * something else is changed, as by typing: the button undoes what stands beside it, and nothing else.
 */

import { el } from "./dom.js";

/** @param {{last: object, listen: (callback: () => void) => void, undo: () => boolean}} store */
export function undoBar(store) {
  const said = el("p", { class: "rb-prices-said", role: "status" });
  const undo = el("button", { type: "button", class: "rb-button", hidden: true }, "Undo");
  let about = store.last;
  const say = (/** @type {string} */ says, /** @type {boolean} */ canUndo) => {
    about = store.last;
    said.textContent = says;
    undo.hidden = !canUndo;
  };
  store.listen(() => {
    if (!undo.hidden && store.last !== about) say("", false);
  });
  undo.addEventListener("click", () => {
    const done = store.undo();
    say(done ? "Undone." : "That cannot be undone any more: something else was changed since.", false);
  });
  return { element: el("div", { class: "rb-prices-bar" }, said, undo), say };
}
