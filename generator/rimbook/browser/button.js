/** A button that does one thing. */

import { el } from "./dom.js";

/**
 * @param {string} words
 * @param {() => void} act
 * @param {string} [label] where the words alone do not say what it is about
 */
export function button(words, act, label = "") {
  const made = el("button", { type: "button", class: "rb-button", "aria-label": label || false }, words);
  made.addEventListener("click", act);
  return made;
}
