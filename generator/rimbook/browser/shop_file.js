/**
 * All that a shop entered, as one file and back. Besides the rows of `buy_prices.js` it holds how the shop
 * charges: rows of kind `terms`, with a price or a count, and of kind `seconds`, where the count is how long
 * a piece of work takes.
 */

import { COLUMNS, readPriceList, writePriceList } from "./buy_prices.js";
import { writeCsv } from "./csv.js";
import { readAmount, written } from "./money.js";
import { MOST_MARKUP, MOST_SECONDS, MOST_STEP } from "./shop.js";

/** @typedef {import("./buy_prices.js").Fields} Fields */
/** @typedef {import("./csv.js").Fault} Fault */
/** @typedef {import("./sheet_quote.js").Terms} Terms */
/** @typedef {import("./sheet_time.js").Labour} Labour */
/** @typedef {import("./shop.js").Shop} Shop */

/** What each kind of work is called in a file and on the page. */
export const WORKS = /** @type {const} */ ([
  ["setUp", "set-up", "Look over, clean, lay out, once a job"],
  ["single", "single", "A single part"],
  ["wide", "wide", "A wide part"],
  ["twin", "twin", "A two-post part"],
  ["strip", "strip", "A strip, besides its posts"],
  ["post", "post", "Each post of a strip"],
  ["turn", "turn", "A part that is turned"],
]);

const AMOUNTS = /** @type {const} */ ([
  ["hourly", "hour"],
  ["least", "least"],
  ["step", "step"],
]);

/** @param {Shop} shop */
export function writeShop({ list, terms, labour }) {
  const row = (/** @type {string[]} */ [kind, part, count, price = ""]) => [
    kind,
    part,
    count,
    price,
    price && list.currency,
    "",
  ];
  return (
    writePriceList(list) +
    writeCsv([
      ...AMOUNTS.map(([name, part]) => row(["terms", part, "", written(terms[name] ?? 1, list.currency)])),
      row(["terms", "markup", String(terms.markup)]),
      row(["terms", "half-to-even", terms.half === "even" ? "1" : "0"]),
      ...WORKS.map(([name, part]) => row(["seconds", part, String(labour[name])])),
    ])
  );
}

/**
 * Rows of a file added to what there is: a row about the same pack, or the same part on the shelf, takes the
 * place of the older one. Nothing else is lost.
 * @param {string} text
 * @param {Shop} shop
 * @returns {{shop: Shop, faults: Fault[], taken: number}} and how many rows were taken over
 */
export function addFile(text, shop) {
  const { list, settings, faults } = readPriceList(text, shop.list.currency);
  const isEmpty = !shop.list.sold.length && !shop.list.shelf.length;
  if (list.currency !== shop.list.currency && !isEmpty) {
    const [theirs, yours] = [list.currency, shop.list.currency];
    const message = `The file is in ${theirs}, your list in ${yours}: save your list as a file and forget it first.`;
    return { shop, faults: [{ row: 1, message }, ...faults], taken: 0 };
  }
  const pack = (/** @type {any} */ row) => `${row.part} ${row.count} ${row.seller}`;
  const part = (/** @type {any} */ row) => row.part;
  /** @type {Shop} */
  let now = {
    ...shop,
    list: {
      currency: list.currency,
      sold: joined(shop.list.sold, list.sold, pack),
      shelf: joined(shop.list.shelf, list.shelf, part),
    },
  };
  let taken = list.sold.length + list.shelf.length;
  for (const { row, fields } of settings) {
    const next = withSetting(now, fields);
    if ("problem" in next) faults.push({ row, message: next.problem });
    else [now, taken] = [next, taken + 1];
  }
  return { shop: now, faults: faults.sort((a, b) => a.row - b.row), taken };
}

/**
 * @param {Shop} shop
 * @param {Fields} fields
 * @returns {Shop | {problem: string}}
 */
function withSetting(shop, fields) {
  const kind = (fields["kind"] ?? "").trim().toLowerCase();
  const part = (fields["part"] ?? "").trim().toLowerCase();
  const count = fields["count"] ?? "";
  const work = WORKS.find((each) => each[1] === part);
  if (kind === "seconds") {
    const known = WORKS.map((each) => each[1]).join(", ");
    if (!work) return { problem: `“${part}” is no kind of work: expected ${known}.` };
    const read = readNumber(count, MOST_SECONDS, "seconds");
    return "problem" in read ? read : { ...shop, labour: { ...shop.labour, [work[0]]: read.value } };
  }
  const amount = AMOUNTS.find((each) => each[1] === part);
  if (amount) {
    const read = readTerm(amount[0], fields["price"] ?? "", shop.list.currency);
    return "problem" in read ? read : { ...shop, terms: { ...shop.terms, [amount[0]]: read.value } };
  }
  if (part === "markup") {
    const read = readTerm("markup", count, shop.list.currency);
    return "problem" in read ? read : { ...shop, terms: { ...shop.terms, markup: read.value } };
  }
  if (part === "half-to-even")
    return { ...shop, terms: { ...shop.terms, half: count.trim() === "1" ? "even" : "away" } };
  return { problem: `“${part}” is no term: expected hour, least, step, markup or half-to-even.` };
}

/**
 * @param {"hourly" | "least" | "step" | "markup"} name
 * @param {string} typed
 * @param {string} currency
 * @returns {{value: number} | {problem: string}}
 */
export function readTerm(name, typed, currency) {
  if (name === "markup") return readNumber(typed, MOST_MARKUP, "percent", true);
  const read = readAmount(typed.trim() || "0", currency);
  if ("problem" in read) return read;
  if (name === "step" && read.amount > MOST_STEP) {
    return { problem: `A total is rounded to ${written(MOST_STEP, currency)} at most.` };
  }
  return { value: name === "step" ? Math.max(1, read.amount) : read.amount };
}

/**
 * @param {string} typed
 * @param {number} most
 * @param {string} unit
 * @param {boolean} [isBroken] whether it may have digits behind the point
 * @returns {{value: number} | {problem: string}}
 */
export function readNumber(typed, most, unit, isBroken = false) {
  const text =
    typed
      .trim()
      .replace(/\s*(?:%|s)$/, "")
      .replace(",", ".") || "0";
  const isPlain = (isBroken ? /^\d{1,6}(?:\.\d{1,2})?$/ : /^\d{1,6}$/).test(text);
  const value = Number(text);
  if (isPlain && value <= most) return { value };
  const what = isBroken ? "a number" : "a whole number";
  return { problem: `“${typed}” will not do: expected ${what} of ${unit} from 0 to ${most}.` };
}

/**
 * @template Row
 * @param {readonly Row[]} old
 * @param {readonly Row[]} fresh
 * @param {(row: Row) => string} about
 * @returns {Row[]}
 */
function joined(old, fresh, about) {
  const rows = new Map([...old, ...fresh].map((row) => [about(row), row]));
  return [...rows.values()];
}

/** The heading of a file, for those who write one by hand. */
export const HEADING = COLUMNS.join(",");
