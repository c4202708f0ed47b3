/**
 * Where a page shows what is kept for offline use. `[data-rb-offline="line"]` gets a sentence before what stands
 * in it; `[data-rb-offline="all"]` gets a sentence, a bar and buttons instead of it.
 */

import { el, fill } from "./dom.js";
import { howMuch, isWhole, size, whatElse } from "./offline_words.js";

/** @typedef {import("./offline_words.js").Told} Told */

/** @typedef {"" | "whole" | "none"} Choice nothing chosen; everything; nothing at all */

/** @typedef {(what: "whole" | "look" | "forget") => void} Act */

/**
 * @typedef {object} Place
 * @property {(why: string) => void} without there is no worker, and why
 * @property {(told: Told, choice: Choice, act: Act) => void} told
 */

/**
 * @param {HTMLElement} host
 * @returns {Place}
 */
export function startPlace(host) {
  return host.dataset["rbOffline"] === "line" ? startLine(host) : startAll(host);
}

/**
 * @param {HTMLElement} host
 * @returns {Place}
 */
function startLine(host) {
  const words = el("span");
  const said = el("span", { role: "status" });
  host.prepend(words, " ", said, " ");
  return {
    without: (why) => fill(words, why),
    told: (told, choice) => {
      fill(words, choice === "none" ? "" : howMuch(told));
      fill(said, choice === "none" ? "" : whatElse(told));
    },
  };
}

/**
 * @param {HTMLElement} host
 * @returns {Place}
 */
function startAll(host) {
  const words = el("p");
  const said = el("p", { role: "status" });
  const bar = el("progress", { max: "1", value: "0", "aria-label": "Kept for offline use" });
  const buttons = el("p", { class: "rb-hand" });
  fill(host, words, bar, said, buttons);
  const button = {
    whole: el("button", { type: "button", class: "rb-button" }),
    look: el("button", { type: "button", class: "rb-button" }, "Look for a new edition"),
    forget: el("button", { type: "button", class: "rb-button" }, "Forget what is kept"),
  };
  buttons.append(button.whole, button.look, button.forget);
  return {
    without: (why) => {
      fill(words, why);
      fill(said);
      bar.hidden = buttons.hidden = true;
    },
    told: (told, choice, act) => {
      const isOff = choice === "none";
      fill(words, isOff ? "Nothing is kept for offline use, as you asked." : howMuch(told));
      fill(said, isOff ? "" : whatElse(told));
      bar.hidden = isOff || told.allFiles === 0;
      bar.value = told.allFiles ? told.files / told.allFiles : 0;
      fill(button.whole, wholeWords(told));
      button.whole.hidden = !isOff && (told.allFiles === 0 || isWhole(told) || told.whole);
      button.look.hidden = isOff || told.busy || told.files === 0;
      button.forget.hidden = isOff;
      button.whole.onclick = () => act("whole");
      button.look.onclick = () => act("look");
      button.forget.onclick = () => act("forget");
    },
  };
}

/** @param {Told} told */
function wholeWords({ allFiles, allBytes }) {
  return allFiles ? `Keep the whole book (${size(allBytes)})` : "Keep this book for offline use";
}
