/**
 * The bench sheet of a frame's page. It stays closed until somebody wants it, or until the address or the
 * device holds one; its parts are made when it is first opened.
 *
 * `#sheet` holds the data block, a sentence that goes, a button, and a place for each part.
 */

import { el, fill } from "./dom.js";
import { readFrame } from "./sheet_frame.js";
import { startKeeping } from "./sheet_keeping.js";
import { openSheet } from "./sheet_kept.js";
import { startMarking } from "./sheet_marking_view.js";
import { isBlank } from "./sheet_state.js";
import { startStore } from "./sheet_store.js";
import { startTicket } from "./sheet_ticket_view.js";
import { startVerdicts } from "./sheet_verdicts_view.js";
import { startWork } from "./sheet_work_view.js";

/** @param {ParentNode} page */
export function startSheet(page) {
  const section = page.querySelector("#sheet");
  const body = section?.querySelector("[data-rb-sheet-body]");
  const need = section?.querySelector("[data-rb-sheet-need]");
  if (!(section instanceof HTMLElement) || !(body instanceof HTMLElement) || !need) return;
  const frame = readFrame(dataOf(section));
  if (!frame) {
    fill(need, "The bench sheet needs a newer copy of this page: open it anew.");
    return;
  }
  const opened = openSheet(frame, location.hash);
  const isBroken = opened.read.problems.length > 0 && isBlank(opened.read.sheet);
  const store = startStore(frame, isBroken && opened.other ? opened.other : opened.read.sheet);
  const button = el("button", { type: "button", class: "rb-button rb-sheet-open", "aria-controls": "sheet-body" });
  // The button that asked for this script goes; whoever was on it stays where it was.
  const wasHere = need.contains(document.activeElement);
  fill(need, button);
  let isMade = false;
  /** @param {boolean} isOpen */
  const show = (isOpen) => {
    body.hidden = !isOpen;
    section.classList.toggle("is-open", isOpen);
    button.setAttribute("aria-expanded", String(isOpen));
    button.textContent = isOpen ? "Close the bench sheet" : "Open the bench sheet";
    if (isOpen && !isMade) {
      isMade = true;
      makeParts(section, store);
    }
    moveDrawings(page, section, isOpen);
  };
  button.addEventListener("click", () => show(body.hidden));
  const isWanted = section.dataset["rbSheetWanted"] !== undefined;
  show(isWanted || opened.from !== "new");
  if (wasHere) button.focus();
  const notes = section.querySelector("[data-rb-sheet-notes]");
  if (notes instanceof HTMLElement) startKeeping(store, opened, notes, () => body.hidden && show(true));
}

/**
 * @param {HTMLElement} section
 * @param {import("./sheet_store.js").Store} store
 */
function makeParts(section, store) {
  const place = (/** @type {string} */ name) =>
    /** @type {HTMLElement} */ (section.querySelector(`[data-rb-sheet-part="${name}"]`));
  startMarking(place("marking"), store);
  startVerdicts(place("verdicts"), store);
  startTicket(place("ticket"), store, startWork(place("work"), store));
}

/**
 * While the sheet is open the drawings stand inside it, between the tools and the verdicts.
 * @param {ParentNode} page
 * @param {HTMLElement} section
 * @param {boolean} isOpen
 */
function moveDrawings(page, section, isOpen) {
  const drawings = page.querySelector("#drawings");
  if (!drawings) return;
  if (isOpen) section.querySelector("[data-rb-sheet-drawings]")?.append(drawings);
  else section.after(drawings);
}

/** @param {Element} section */
function dataOf(section) {
  try {
    return JSON.parse(section.querySelector("script[type='application/json']")?.textContent ?? "");
  } catch {
    return null;
  }
}
