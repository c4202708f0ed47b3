/** The pick list of the technician: what to do where, with which part and pin, in the order of the walk. */

import { el, fill } from "./dom.js";
import { rowsOf } from "./sheet_rows.js";
import { counted } from "./words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_picks.js").Pick} Pick */

/** A box to tick with a pen, so it is on paper only. */
const TICK = "rb-picks-tick";

/**
 * @param {HTMLElement} paper
 * @param {SheetFrame} frame
 * @param {readonly Pick[]} picks
 * @param {string} date
 */
export function fillPicks(paper, frame, picks, date) {
  const order = frame.holes.map(({ address }) => address);
  const isTrimmed = picks.some(({ trim }) => trim);
  const rows = neighbours(picks).map((row) => rowFor(row, order, isTrimmed));
  const head = (/** @type {string} */ name, /** @type {string | false} */ kind = false) =>
    el("th", { scope: "col", class: kind }, name);
  fill(
    paper,
    el("h4", {}, `${frame.name}: pick list`),
    el("p", {}, `${date}. ${counted(picks.length, "part")} to see to, clockwise from the middle of the head.`),
    el(
      "div",
      { "class": "rb-scroll", "role": "region", "aria-label": "Pick list", "tabindex": "0" },
      el(
        "table",
        { class: "rb-table" },
        el(
          "thead",
          {},
          el("tr", {}, head("Done", TICK), head("Hole"), head("Do"), head("Pin"), isTrimmed && head("Trim")),
        ),
        el("tbody", {}, ...rows),
      ),
    ),
    el(
      "p",
      { class: "rb-note" },
      "Cover your eyes when you push or pull parts: they fly. ",
      isTrimmed && "Cut after fitting, with the frame held still, away from your hand, never into the rim.",
    ),
  );
}

/**
 * Single parts beside each other that get the same stand in one row.
 * @param {readonly Pick[]} picks
 * @returns {Pick[][]}
 */
function neighbours(picks) {
  /** @type {Pick[][]} */
  const rows = [];
  const like = (/** @type {Pick} */ { holes, act, part, says, pin, trim, lacks }) =>
    JSON.stringify([holes.length, holes[0][0], act, part, says, pin, trim, lacks]);
  for (const pick of picks) {
    const row = rows.at(-1);
    const isNext = row && pick.holes.length === 1 && row[row.length - 1].piece + 1 === pick.piece;
    if (isNext && like(row[0]) === like(pick)) row.push(pick);
    else rows.push([pick]);
  }
  return rows;
}

/**
 * @param {readonly Pick[]} row
 * @param {readonly string[]} order
 * @param {boolean} isTrimmed whether there is a column for it
 */
function rowFor(row, order, isTrimmed) {
  const { act, name, says, pin, trim, isSubstitute, lacks } = row[0];
  const count = row.length > 1 ? `${row.length} × ` : "";
  return el(
    "tr",
    {},
    el("td", { class: TICK }, "☐"),
    el(
      "th",
      { scope: "row" },
      rowsOf(
        order,
        row.flatMap(({ holes }) => holes),
      ),
    ),
    el(
      "td",
      {},
      name ? `${act}: ` : act,
      name && el("b", {}, count + name),
      lacks && el("strong", {}, ": no part to be had"),
      isSubstitute && ", a substitute",
      says && `, ${says}`,
    ),
    el("td", {}, pin),
    isTrimmed && el("td", {}, trim),
  );
}
