/** The head with the marks on it, as it goes on a ticket. */

import { shape } from "./sheet_sign.js";
import { signsOn } from "./sheet_shown.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */

const KEPT = ["frame", "strings", "parts", "bores", "addresses"];
const PREFIX = "ticket-";
const MARGIN = 4;

/**
 * A copy of the face drawing without what a player need not know.
 * @param {SVGSVGElement} face
 * @param {SheetFrame} frame
 * @returns {{element: SVGSVGElement, show: (sheet: Sheet, verdicts: readonly Verdict[]) => void}}
 */
export function ticketDrawing(face, frame) {
  const copy = /** @type {SVGSVGElement} */ (face.cloneNode(true));
  const isKept = (/** @type {Element} */ layer) => KEPT.some((name) => layer.classList.contains(`layer-${name}`));
  for (const layer of copy.querySelectorAll(".layer")) if (!isKept(layer)) layer.remove();
  for (const extra of copy.querySelectorAll("title, desc, .rb-ring")) extra.remove();
  for (const named of copy.querySelectorAll("[id]")) named.id = PREFIX + named.id;
  for (const use of copy.querySelectorAll("use")) {
    use.setAttribute("href", (use.getAttribute("href") ?? "").replace("#", `#${PREFIX}`));
  }
  const signs = signsOn(copy, frame);
  for (const hole of copy.querySelectorAll("[data-address]")) {
    for (const name of ["data-address", "tabindex", "role", "id"]) hole.removeAttribute(name);
    hole.classList.remove("is-marked", "hole");
  }
  const element = /** @type {SVGSVGElement} */ (shape("svg", { class: copy.getAttribute("class") ?? "" }));
  for (const name of ["font-family", "fill"]) element.setAttribute(name, copy.getAttribute(name) ?? "");
  element.setAttribute("aria-hidden", "true");
  element.append(...copy.childNodes);
  crop(element, face);
  return { element, show: signs };
}

/**
 * The caption below is not drawn, so its room is cut off: at the lowest address, or the throat.
 * @param {SVGSVGElement} element
 * @param {SVGSVGElement} face
 */
function crop(element, face) {
  const { x, y, width, height } = face.viewBox.baseVal;
  const caption = face.querySelector(".layer-caption text");
  const end = caption
    ? Number(caption.getAttribute("y")) - Number(caption.parentElement?.getAttribute("font-size"))
    : y + height;
  element.setAttribute("viewBox", [x, y, width, end + MARGIN - y].join(" "));
}
