/**
 * Buttons that keep a frame for the board.
 *
 * In a page: `<button type="button" hidden data-rb-keep="plover-76" data-rb-name="Plover 76"></button>`, shown
 * once it works. `<span data-rb-kept-count></span>` anywhere becomes the number of kept frames, empty for none.
 */

import { all, el } from "./dom.js";
import { MOST_FRAMES, kept, onKept, toggle } from "./kept.js";

/** Wires what stands in the page, now and after every change of the kept frames. */
export function startKeepButtons() {
  for (const button of all(document, "[data-rb-keep]", HTMLButtonElement)) wire(button);
  onKept(showAll);
  showAll();
}

/**
 * @param {string} slug
 * @param {string} name
 */
export function keepButton(slug, name) {
  const button = el("button", {
    type: "button",
    class: "rb-keep",
    "data-rb-keep": slug,
    "data-rb-name": name,
  });
  wire(button);
  show(button, kept());
  return button;
}

/** @param {HTMLButtonElement} button */
function wire(button) {
  button.addEventListener("click", () => {
    const result = toggle(button.dataset["rbKeep"] ?? "");
    if (result.full) say(button, `Only ${MOST_FRAMES} frames can be kept at once.`);
    else
      say(
        button,
        result.remembered ? "" : "This browser keeps nothing. The choice lasts as long as this page.",
      );
  });
}

/**
 * @param {HTMLButtonElement} button
 * @param {string} text
 */
function say(button, text) {
  let note = button.nextElementSibling;
  if (!note?.matches(".rb-keep-note")) {
    if (!text) return;
    note = el("span", { class: "rb-keep-note", role: "status" });
    button.after(note);
  }
  note.textContent = text;
}

function showAll() {
  const slugs = kept();
  for (const button of all(document, "[data-rb-keep]", HTMLButtonElement)) show(button, slugs);
  for (const count of all(document, "[data-rb-kept-count]", HTMLElement)) {
    count.textContent = slugs.length ? String(slugs.length) : "";
  }
}

/**
 * @param {HTMLButtonElement} button
 * @param {readonly string[]} slugs
 */
function show(button, slugs) {
  const isKept = slugs.includes(button.dataset["rbKeep"] ?? "");
  const name = button.dataset["rbName"] ?? "this frame";
  button.hidden = false;
  button.classList.toggle("is-kept", isKept);
  button.textContent = isKept ? "★ Kept" : "☆ Keep";
  button.setAttribute("aria-label", isKept ? `Kept: ${name}. Let go` : `Keep ${name}`);
}
