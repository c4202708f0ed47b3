/** Marking: the frame looked over, then its holes on the drawings, with the tools under a thumb. */

import { el, isTyping } from "./dom.js";
import { toolBar } from "./sheet_bar.js";
import { frameCheck } from "./sheet_check_view.js";
import { doubtList } from "./sheet_doubts.js";
import { KEYS, startHand } from "./sheet_hand.js";
import { startMarker } from "./sheet_marker.js";
import { startShown } from "./sheet_shown.js";

/** @typedef {import("./sheet_store.js").Store} Store */

/**
 * @param {HTMLElement} place
 * @param {Store} store
 */
export function startMarking(place, store) {
  const sheet = place.closest("section") ?? place;
  startShown(document, store);
  const marker = startMarker(store);
  startHand(document, store, marker);
  const bar = toolBar(store, marker, (isLarge) => sheet.classList.toggle("is-large", isLarge));
  place.append(
    frameCheck(store),
    el(
      "div",
      { class: "rb-marking" },
      el("h3", {}, "Mark the holes"),
      el("p", {}, "Choose below what you see, then tap the holes in either drawing. Tap again to take a mark away."),
      keyList(),
      doubtList(store),
      el("div", { "data-rb-sheet-drawings": "" }),
      bar,
    ),
  );
  marker.listen(({ pen, isSweeping, isStepping }) => {
    sheet.classList.toggle("is-marking", pen !== null || isStepping);
    sheet.classList.toggle("is-sweeping", isSweeping && pen !== null);
  });
  store.watch(({ checks }) => sheet.classList.toggle("is-ended", checks.crack === "found"));
  sheet.addEventListener("keydown", (event) => {
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const isRedo = key === "y" || (key === "z" && event.shiftKey);
    if (!isRedo && key !== "z") return;
    event.preventDefault();
    if (isRedo) store.redo();
    else store.undo();
    marker.hold({ from: null, row: [], said: isRedo ? "Done again." : "Undone." });
  });
}

function keyList() {
  const lines = KEYS.map(([key, does]) => el("div", {}, el("dt", {}, el("kbd", {}, key)), el("dd", {}, does)));
  return el(
    "details",
    { class: "rb-keys" },
    el("summary", {}, "Keys"),
    el("p", {}, "Single keys count while a hole of a drawing has the focus: press Tab until it has."),
    el("dl", { class: "rb-facts" }, ...lines),
  );
}
