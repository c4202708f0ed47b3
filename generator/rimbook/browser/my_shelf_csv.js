/** The plan as a table for spreadsheets, with the columns of the tables of the clubs. */

import { writeCsv } from "./csv.js";
import { purchase } from "./my_shelf_money.js";
import { advice, countsToo, whyOrder } from "./shelf_words.js";

/** @typedef {import("./my_shelf_money.js").Prices} Prices */
/** @typedef {import("./my_shelf_result.js").Shown} Shown */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */
/** @typedef {import("./shelf_plan.js").ShelfPlan} ShelfPlan */

/** @type {Record<string, string>} */
const WHY = { gone: "no such frame in the book", older: "data of another edition", "not loaded": "not loaded" };

/**
 * One drawer a row, then what cannot be planned: of the kind `cannot be planned`, with a frame, why, and the holes
 * in words.
 * @param {Pick<Shown, "plan" | "prices" | "troubled">} all
 * @param {readonly string[]} columns
 */
export function planTable({ plan, prices, troubled }, columns) {
  const rows = [
    ...plan.drawers.map((drawer) => drawerRow(drawer, plan, prices)),
    ...plan.unplanned.map(lostRow),
    ...troubled.map(({ slug, why }) => lostRow({ part: null, frame: slug, holes: "", why: WHY[why] })),
  ];
  return writeCsv([columns, ...rows.map((row) => columns.map((column) => row[column] ?? ""))]);
}

/**
 * @param {Drawer} drawer
 * @param {ShelfPlan} plan
 * @param {Prices} prices
 * @returns {Record<string, string>} cells by column
 */
function drawerRow(drawer, { items, terms }, prices) {
  const { item, levels, order, stock, filled } = drawer;
  const { name, kind, packs } = items[item];
  const own = inOrder(filled.asked.map(({ part }) => part).filter((part) => part !== item)).join(" ");
  return {
    part: item,
    name,
    kind,
    frames: inOrder(filled.asked.map(({ frame }) => frame)).join(" "),
    stands_in_for: kind === "set" ? "" : own,
    opened_for: kind === "set" ? own : "",
    a_year: rounded(drawer.aYear, 4),
    reorder_below: String(levels.reorder),
    fill_up_to: String(levels.upTo),
    chance: rounded(levels.chance, 6),
    short_a_year: rounded(levels.shortAYear, 4),
    stock: String(stock.units),
    order: String(order?.units ?? 0),
    packs: purchase(drawer, packs ?? [], prices).words,
    urgent: String(order?.urgent ?? false),
    why: (whyOrder(drawer, terms) || advice(drawer, terms)).replaceAll("\u00a0", " "),
    counts_too: countsToo(drawer, items),
  };
}

/**
 * @param {{part: string | null, frame: string, holes: string, why: string}} each
 * @returns {Record<string, string>}
 */
function lostRow({ part, frame, holes, why }) {
  return { part: part ?? "", kind: "cannot be planned", frames: frame, why, holes };
}

/** @param {readonly string[]} words each once */
function inOrder(words) {
  return [...new Set(words)].sort();
}

/**
 * @param {number} value
 * @param {number} digits
 */
function rounded(value, digits) {
  return String(Number(value.toFixed(digits)));
}
