/**
 * Fingers, mouse and keys on the drawings, while the sheet is open. Single letters count only while a hole has
 * the focus (WCAG 2.2, 2.1.4); what is not meant for the sheet goes on to whoever else listens.
 */

import { all } from "./dom.js";
import { shape } from "./sheet_sign.js";
import { nearest, placesIn } from "./sheet_spots.js";

/** @typedef {import("./sheet_marker.js").Marker} Marker */
/** @typedef {import("./sheet_state.js").Seen} Seen */
/** @typedef {import("./sheet_store.js").Store} Store */

/** @type {Record<string, Seen>} */
const SEEN_KEYS = { o: "sound", g: "grooved", s: "split", m: "missing", l: "low" };

/** What each key does, for people. @type {[string, string][]} */
export const KEYS = [
  ["Arrows", "along the rim"],
  ["O", "sound"],
  ["G", "grooved; 0 to 9 grooved, turned by so many quarters"],
  ["S", "split"],
  ["M", "missing"],
  ["L", "string sits low"],
  ["A", "again: the same as the last"],
  ["Shift and arrows", "take the mark along to the next hole"],
  ["F", "a row from here: go to its end and give the mark"],
  ["Backspace", "take the mark away"],
  ["U, or Ctrl and Z", "undo; Ctrl, Shift and Z does it again"],
];

/**
 * @param {ParentNode} page
 * @param {Store} store
 * @param {Marker} marker
 */
export function startHand(page, store, marker) {
  for (const drawing of all(page, "#drawings svg", SVGSVGElement)) {
    const places = placesIn(drawing, marker.order);
    if (!places.length) continue;
    point(drawing, places, marker);
    drawing.addEventListener("keydown", (event) => {
      if (!drawing.closest(".rb-sheet") || !(event.target instanceof Element)) return;
      const address = event.target.getAttribute("data-address");
      if (!address || !marker.order.includes(address) || !press(event, address, store, marker)) return;
      event.preventDefault();
      event.stopPropagation();
    });
  }
}

/**
 * @param {SVGSVGElement} drawing
 * @param {readonly import("./sheet_spots.js").Place[]} places
 * @param {Marker} marker
 */
function point(drawing, places, marker) {
  const at = (/** @type {MouseEvent} */ event) => nearest(drawing, places, event.clientX, event.clientY);
  const spots = new Map(places.map((place) => [place.address, place.at]));
  const row = shape("path", { class: "rb-row", "pointer-events": "none" });
  const here = shape("circle", { class: "rb-here", r: "9", "pointer-events": "none" });
  drawing.append(row, here);
  /** @type {{start: string, end: string} | null} */
  let drag = null;
  let wasDragged = false;

  marker.listen(({ row: holes, at: now, from, isStepping }) => {
    const line = holes.map((address) => spots.get(address)).filter((spot) => spot !== undefined);
    row.setAttribute("d", line.length ? `M${line.map(({ x, y }) => `${x} ${y}`).join("L")}` : "");
    const spot = spots.get((isStepping ? now : from) ?? "");
    here.toggleAttribute("hidden", !spot);
    here.setAttribute("cx", String(spot?.x ?? 0));
    here.setAttribute("cy", String(spot?.y ?? 0));
  });

  drawing.addEventListener("pointerdown", (event) => {
    wasDragged = false;
    const { pen, isSweeping } = marker.hand();
    // A finger that is not told to sweep scrolls the page.
    if (!isOpen(drawing) || !pen || !event.isPrimary || event.button || (event.pointerType === "touch" && !isSweeping)) return;
    const start = at(event);
    if (!start) return;
    drag = { start, end: start };
    drawing.setPointerCapture(event.pointerId);
  });
  drawing.addEventListener("pointermove", (event) => {
    const end = drag && at(event);
    if (!drag || !end || end === drag.end) return;
    drag.end = end;
    marker.preview(drag.start, end);
  });
  drawing.addEventListener("pointerup", () => {
    wasDragged = drag !== null && marker.hand().row.length > 0;
    if (drag && wasDragged) marker.sweep(drag.start, drag.end);
    drag = null;
  });
  drawing.addEventListener("pointercancel", () => {
    drag = null;
    marker.hold({ row: [] });
  });
  drawing.addEventListener("click", (event) => {
    if (!isOpen(drawing)) return;
    const address = wasDragged ? null : at(event);
    const isMeant = event.shiftKey && address ? stretch(marker, address) : address !== null && marker.tap(address);
    if (wasDragged || isMeant) event.preventDefault();
    wasDragged = false;
  });
}

/**
 * From the hole before to this one.
 * @param {Marker} marker
 * @param {string} address
 */
function stretch(marker, address) {
  const { at, pen } = marker.hand();
  if (!pen) return false;
  marker.sweep(at ?? address, address);
  return true;
}

/**
 * @param {KeyboardEvent} event
 * @param {string} address
 * @param {Store} store
 * @param {Marker} marker
 * @returns {boolean} whether the key was meant for the sheet
 */
function press(event, address, store, marker) {
  const { key } = event;
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const seen = SEEN_KEYS[key.toLowerCase()];
  if (seen) marker.put(address, { seen, turns: 0 });
  else if (/^\d$/.test(key)) marker.put(address, { seen: "grooved", turns: Number(key) });
  else if (key === "Backspace" || key === "Delete") marker.put(address, null);
  else if (key === "a" || key === "A") marker.again(address);
  else if (key === "f" || key === "F") marker.hold({ from: address, said: `A row from ${address}: go to its end.` });
  else if (key === "u" || key === "U") store.undo();
  else if (key === "Enter" || key === " ") return marker.tap(address);
  else if (key === "Escape") return letGo(marker);
  else if (event.shiftKey && key.startsWith("Arrow")) return carry(address, store, marker);
  else return false;
  return true;
}

/**
 * The focus has gone on already; the mark goes along.
 * @param {string} address
 * @param {Store} store
 * @param {Marker} marker
 */
function carry(address, store, marker) {
  const to = document.activeElement?.getAttribute("data-address") ?? "";
  const own = store.sheet().marks[address] ?? store.sheet().last;
  if (own && marker.order.includes(to)) {
    marker.hold({ from: address });
    marker.put(to, own);
  }
  return true;
}

/** @param {Marker} marker */
function letGo(marker) {
  const { pen, from, isStepping } = marker.hand();
  if (!from && !pen && !isStepping) return false;
  marker.hold(from ? { from: null, row: [], said: "" } : { pen: null, isStepping: false, said: "" });
  return true;
}

/** @param {Element} drawing */
function isOpen(drawing) {
  return Boolean(drawing.closest(".rb-sheet"));
}
