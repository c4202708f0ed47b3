/**
 * What a shop pays for parts and what lies on its shelf, as a file with the columns `kind`, `part`, `count`,
 * `price`, `currency`, `seller`. A row of kind `sold` is something to buy, `count` pieces of a part (or sets)
 * for `price`; a row of kind `shelf` is what is there, and its price, which may be left out, is what a
 * customer pays for one piece.
 */

import { headed, readCsv, uneven, writeCsv } from "./csv.js";
import { digitsOf } from "./currencies.js";
import { readAmount, written } from "./money.js";

/** @typedef {import("./buy_list.js").PriceList} PriceList */
/** @typedef {import("./buy_list.js").Sold} Sold */
/** @typedef {import("./buy_list.js").Shelved} Shelved */
/** @typedef {import("./csv.js").Fault} Fault */

/** The cells of a row by the name of their column. @typedef {Record<string, string>} Fields */

/** Rows that are about how a shop charges, not about parts; see `shop_file.js`. */
const SETTINGS = ["terms", "seconds"];

export const COLUMNS = ["kind", "part", "count", "price", "currency", "seller"];
const NEEDED = ["part", "count"];
const PART = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const LONGEST = 100;
const MOST_PIECES = 10_000;

/**
 * One row about a part, as typed into a table or read from a file.
 * @param {Fields} fields
 * @param {string} currency
 * @returns {{sold: Sold} | {shelved: Shelved} | {problem: string}}
 */
export function readRow(fields, currency) {
  const kind = (fields["kind"] || "sold").trim().toLowerCase();
  const part = fields["part"].trim().toLowerCase();
  const seller = (fields["seller"] ?? "").trim();
  const price = (fields["price"] ?? "").trim();
  const count = readCount(fields["count"]);
  if (kind !== "sold" && kind !== "shelf") {
    return { problem: `“${fields["kind"]}” is no kind of row: expected sold or shelf.` };
  }
  if (!part) return { problem: "The part is missing: expected its id, such as barrel-21-short." };
  if (!PART.test(part) || part.length > LONGEST) {
    return { problem: `“${fields["part"]}” is no id of a part: expected one such as barrel-21-short.` };
  }
  if (seller.length > LONGEST) return { problem: `The seller's name has more than ${LONGEST} letters.` };
  if ("problem" in count) return count;
  if (kind === "shelf" && !price) return { shelved: { part, count: count.count, price: null } };
  if (!price) return { problem: `The price of ${part} is missing.` };
  const read = readAmount(price, currency);
  if ("problem" in read) return read;
  if (kind === "shelf") return { shelved: { part, count: count.count, price: read.amount } };
  if (count.count === 0) return { problem: `${part} is sold in packs of none: expected 1 or more.` };
  return { sold: { part, count: count.count, price: read.amount, seller } };
}

/**
 * A price list from a file or from what was pasted. Good rows are kept, whatever is wrong with others.
 * @param {string} text
 * @param {string} fallback the currency of a file that names none
 * @returns {{list: PriceList, settings: {row: number, fields: Fields}[], faults: Fault[]}}
 */
export function readPriceList(text, fallback) {
  const { rows, faults } = readCsv(text);
  const { row: first, columns, others, missing, found } = headed(rows, NEEDED);
  if (missing.length) {
    faults.push({
      row: first,
      message: `The heading lacks ${missing.join(" and ")}: expected ${COLUMNS.join(", ")}; ${found}.`,
    });
    return { list: { currency: fallback, sold: [], shelf: [] }, settings: [], faults };
  }
  const named = others.map(({ row, cells }) => ({
    row,
    count: cells.length,
    fields: Object.fromEntries(columns.map((column, at) => [column, cells[at] ?? ""])),
  }));
  const currency = named.map(({ fields }) => currencyIn(fields)).find((code) => digitsOf(code) !== null) ?? fallback;
  /** @type {PriceList} */
  const list = { currency, sold: [], shelf: [] };
  const settings = [];
  /** @type {Map<string, number>} */
  const seen = new Map();
  for (const { row, count, fields } of named) {
    if (SETTINGS.includes((fields["kind"] ?? "").trim().toLowerCase())) {
      settings.push({ row, fields });
      continue;
    }
    const message = uneven(count, columns.length) || add(list, fields, row, seen);
    if (message) faults.push({ row, message });
  }
  return { list, settings, faults: faults.sort((a, b) => a.row - b.row) };
}

/**
 * @param {PriceList} list
 * @param {Fields} fields
 * @param {number} row
 * @param {Map<string, number>} seen rows by what they are about
 * @returns {string} what is wrong with the row, or nothing
 */
function add(list, fields, row, seen) {
  const currency = currencyIn(fields);
  if (currency && digitsOf(currency) === null) {
    return `“${fields["currency"]}” is no currency: expected a code of three letters such as EUR.`;
  }
  if (currency && currency !== list.currency) {
    return `The price is in ${currency}; expected ${list.currency}: a list has one currency.`;
  }
  const read = readRow(fields, list.currency);
  if ("problem" in read) return read.problem;
  const about = "sold" in read ? `${read.sold.count} ${read.sold.part} ${read.sold.seller}` : read.shelved.part;
  const before = seen.get(about);
  if (before) return `It is about the same as row ${before}, which is kept.`;
  seen.set(about, row);
  if ("sold" in read) list.sold.push(read.sold);
  else list.shelf.push(read.shelved);
  return "";
}

/** @param {Fields} fields */
function currencyIn(fields) {
  return (fields["currency"] ?? "").trim().toUpperCase();
}

/**
 * The same as a file.
 * @param {PriceList} list
 */
export function writePriceList({ currency, sold, shelf }) {
  const row = (/** @type {string} */ kind, /** @type {Sold | Shelved} */ { part, count, price }, seller = "") => {
    return [kind, part, String(count), price === null ? "" : written(price, currency), currency, seller];
  };
  return writeCsv([
    COLUMNS,
    ...sold.map((each) => row("sold", each, each.seller)),
    ...shelf.map((each) => row("shelf", each)),
  ]);
}

/**
 * @param {string} typed
 * @returns {{count: number} | {problem: string}}
 */
function readCount(typed) {
  const text = typed.trim();
  if (/^[-−–]\s*\d/.test(text)) return { problem: `The count “${typed}” is below zero.` };
  if (!/^\d{1,9}$/.test(text)) return { problem: `“${typed}” is no count: expected a whole number.` };
  const count = Number(text);
  return count > MOST_PIECES ? { problem: `The count ${text} is absurd: at most ${MOST_PIECES}.` } : { count };
}
