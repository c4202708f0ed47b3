/** The frame looked over, before any hole: what a crack ends, and what has to be seen to first. */

import { el } from "./dom.js";
import { CHECKS, FOUND, look } from "./sheet_state.js";
import { CHECK_ADVICE, CHECK_WORDS } from "./sheet_words.js";

/** @typedef {import("./sheet_state.js").Check} Check */
/** @typedef {import("./sheet_state.js").Found} Found */
/** @typedef {import("./sheet_store.js").Store} Store */

/** @type {Record<Found, string>} */
const FOUND_WORDS = { "not looked": "Not looked at", none: "None", found: "Found" };

/** @param {Store} store */
export function frameCheck(store) {
  const rows = CHECKS.map((check) => row(check, store));
  const none = el("button", { type: "button", class: "rb-button" }, "None of the three");
  none.addEventListener("click", () => {
    store.change(CHECKS.reduce((sheet, check) => look(sheet, check, "none"), store.sheet()));
  });
  return el(
    "section",
    { class: "rb-check", "aria-labelledby": "check-title" },
    el("h3", { id: "check-title" }, "Look over the frame first"),
    el("p", {}, "In good light, round every hole and along the whole rim, with the strings out. Wear eye protection."),
    ...rows,
    el("p", {}, none),
  );
}

/**
 * @param {Check} check
 * @param {Store} store
 */
function row(check, store) {
  const words = CHECK_WORDS[check];
  const boxes = FOUND.map((found) => {
    const box = el("input", { type: "radio", name: `check-${check}`, value: found });
    box.addEventListener("change", () => store.change(look(store.sheet(), check, found)));
    return box;
  });
  const advice = el("p", { class: "rb-caution", role: "status" });
  store.watch(({ checks }) => {
    for (const box of boxes) box.checked = box.value === checks[check];
    const says = checks[check] === "found" ? CHECK_ADVICE[check] : "";
    if (advice.textContent !== says) advice.textContent = says;
  });
  return el(
    "fieldset",
    {},
    el("legend", {}, words[0].toUpperCase() + words.slice(1)),
    el("div", { class: "rb-choice" }, ...boxes.map((box, at) => el("label", {}, box, FOUND_WORDS[FOUND[at]]))),
    advice,
  );
}
