/** What was wrong with the rows of a table that was taken in. */

import { el, fill } from "./dom.js";
import { counted } from "./words.js";

/** @typedef {import("./csv.js").Fault} Fault */

const MOST_FAULTS = 12;

/**
 * @param {HTMLElement} host
 * @param {readonly Fault[]} faults
 */
export function showFaults(host, faults) {
  if (!faults.length) return fill(host);
  const items = faults.slice(0, MOST_FAULTS).map(({ row, message }) => el("li", {}, `Row ${row}: ${message}`));
  const more = faults.length - MOST_FAULTS;
  fill(
    host,
    el("p", { class: "rb-prices-wrong" }, "These rows were left out; all others were taken over:"),
    el("ul", {}, ...items, more > 0 && el("li", {}, `and ${counted(more, "row")} more.`)),
  );
}
