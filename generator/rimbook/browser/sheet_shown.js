/** The marks shown wherever a hole is: on the drawings, in the table, and to those who hear the page. */

import { all, el } from "./dom.js";
import { letters, shape, sign } from "./sheet_sign.js";
import { placesIn } from "./sheet_spots.js";
import { judge } from "./sheet_verdict.js";
import { actWords, markWords } from "./sheet_words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_state.js").Mark} Mark */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */
/** @typedef {import("./sheet_spots.js").Place} Place */

const TABLE_MS = 150;

/**
 * Draws the marks of a sheet into a drawing of its frame, and only what has changed since the last time.
 * @param {SVGSVGElement} drawing
 * @param {SheetFrame} frame
 * @returns {(sheet: Sheet, verdicts: readonly Verdict[]) => void}
 */
export function signsOn(drawing, frame) {
  const places = placesIn(drawing, frame.holes.map(({ address }) => address));
  const layer = shape("g", { class: "layer layer-signs", "pointer-events": "none" });
  drawing.append(layer);
  drawing.classList.add("has-signs");
  const pieces = new Map(frame.holes.map(({ address, piece }) => [address, piece]));
  const names = new Map(places.map(({ address, hole }) => [address, hole.getAttribute("aria-label") ?? address]));
  /** @type {Map<string, {as: string, drawn: SVGElement | null}>} */
  const shown = new Map();
  return (sheet, verdicts) => {
    for (const { address, hole, sign: spot } of places) {
      const mark = sheet.marks[address] ?? null;
      const verdict = verdicts[pieces.get(address) ?? -1];
      const isTaken = !mark && verdict?.act === "replace";
      const as = mark || isTaken ? `${mark ? letters(mark) : ""} ${actWords(verdict)}` : "";
      const old = shown.get(address);
      if ((old?.as ?? "") === as) continue;
      old?.drawn?.remove();
      const drawn = as ? sign(mark, verdict.act) : null;
      drawn?.setAttribute("transform", `translate(${spot.x.toFixed(1)} ${spot.y.toFixed(1)})`);
      if (drawn) layer.append(drawn);
      shown.set(address, { as, drawn });
      hole.setAttribute("aria-label", as ? `${names.get(address)}; ${saidOf(mark, verdict)}` : (names.get(address) ?? ""));
    }
  };
}

/**
 * Shows the marks of a store on the page for as long as it is open.
 * @param {ParentNode} page
 * @param {import("./sheet_store.js").Store} store
 */
export function startShown(page, store) {
  const { frame } = store;
  const ways = all(page, "#drawings svg", SVGSVGElement)
    .filter((drawing) => drawing.querySelector("[data-address]"))
    .map((drawing) => signsOn(drawing, frame));
  store.watch((sheet) => {
    const { verdicts } = judge(frame, sheet);
    for (const show of ways) show(sheet, verdicts);
  });
  const fillIn = columnIn(page, frame);
  const writeTable = () => fillIn(store.sheet(), judge(frame, store.sheet()).verdicts);
  // A table as long as this takes the browser longer than all the rest.
  let timer = 0;
  store.listen(() => {
    clearTimeout(timer);
    timer = setTimeout(writeTable, TABLE_MS);
  });
  addEventListener("beforeprint", writeTable);
}

/**
 * The hole table gets a column of what was seen, and beside each marked address its letter.
 * @param {ParentNode} page
 * @param {SheetFrame} frame
 * @returns {(sheet: Sheet, verdicts: readonly Verdict[]) => void}
 */
function columnIn(page, frame) {
  const rows = all(page, "#holes tr[data-hole]", HTMLTableRowElement);
  const pieces = new Map(frame.holes.map(({ address, piece }) => [address, piece]));
  rows[0]?.closest("table")?.tHead?.rows[0]?.append(el("th", { scope: "col" }, "Seen"));
  const cells = rows.map((row) => ({ row, address: row.dataset["hole"] ?? "", cell: row.appendChild(el("td")) }));
  return (sheet, verdicts) => {
    for (const { row, address, cell } of cells) {
      const mark = sheet.marks[address] ?? null;
      const verdict = verdicts[pieces.get(address) ?? -1];
      const words = mark || verdict?.act === "replace" ? saidOf(mark, verdict) : "";
      if (cell.textContent === words) continue;
      cell.textContent = words;
      row.cells[0]?.toggleAttribute("data-rb-seen", Boolean(mark));
      if (mark) row.cells[0]?.setAttribute("data-rb-seen", letters(mark));
    }
  };
}

/**
 * @param {Mark | null} mark
 * @param {Verdict} verdict
 * @returns {string} `split: replace`
 */
function saidOf(mark, verdict) {
  const act = actWords(verdict).toLowerCase();
  return mark?.seen === "sound" && verdict.act === "leave" ? "sound" : `${markWords(mark)}: ${act}`;
}
