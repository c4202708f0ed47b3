/**
 * What was used, from a table with the columns `part`, `count`, `weeks`; no weeks are a year. Rows that cannot
 * be read are left out and told, as in `bench/shelf_files.py`.
 */

import { headed, readCsv, uneven } from "./csv.js";
import { rules } from "./shelf_terms.js";

/** @typedef {import("./csv.js").Fault} Fault */

/** So many pieces of a part, used in so many years. @typedef {{part: string, count: number, years: number}} Used */

const NEEDED = ["part", "count"];
const PART = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const COUNT = /^[0-9]{1,9}$/;
const WEEKS = /^[0-9]{1,4}(?:\.[0-9]{1,4})?$/;

/**
 * @param {string} text
 * @returns {{used: Used[], faults: Fault[]}}
 */
export function readUsed(text) {
  const { rows, faults } = readCsv(text);
  const { row: first, columns, others, missing, found } = headed(rows, NEEDED);
  if (missing.length) {
    const message = `The heading lacks ${missing.join(" and ")}; ${found}.`;
    return { used: [], faults: inOrder([...faults, { row: first, message }]) };
  }
  /** @type {Used[]} */
  const used = [];
  for (const { row, cells } of others) {
    const read = usedOf(cells, columns);
    if (typeof read === "string") faults.push({ row, message: read });
    else used.push(read);
  }
  return { used, faults: inOrder(faults) };
}

/**
 * @param {readonly string[]} cells
 * @param {readonly string[]} columns
 * @returns {Used | string} what is wrong with the row, in words
 */
function usedOf(cells, columns) {
  const wrong = uneven(cells.length, columns.length);
  if (wrong) return wrong;
  const cell = (/** @type {string} */ column) => (cells[columns.lastIndexOf(column)] ?? "").trim();
  const { weeksOfYear, used } = rules();
  const part = cell("part").toLowerCase();
  const count = cell("count");
  const weeks = cell("weeks").replaceAll(",", ".");
  if (!PART.test(part)) return `“${cell("part")}” is no id of a part; expected one such as barrel-21-short.`;
  if (!COUNT.test(count) || Number(count) > used.mostCount) {
    return `The count is “${count}”; expected a whole number, at most ${grouped(used.mostCount)}.`;
  }
  if (!weeks) return { part, count: Number(count), years: 1 };
  if (!WEEKS.test(weeks) || Number(weeks) > used.mostWeeks) {
    return `The number of weeks is “${weeks}”; expected more than 0, at most ${grouped(used.mostWeeks)}.`;
  }
  if (Number(weeks) === 0) return "The number of weeks is 0; expected more than 0.";
  return { part, count: Number(count), years: Number(weeks) / weeksOfYear };
}

/** @param {number} whole with a comma between thousands */
function grouped(whole) {
  return String(whole).replace(/\B(?=(\d{3})+$)/g, ",");
}

/** @param {readonly Fault[]} faults */
function inOrder(faults) {
  return [...faults].sort((a, b) => a.row - b.row);
}
