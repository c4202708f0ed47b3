/**
 * Tables that sort by any column and the hole table that shows one bore at a time.
 *
 * `table[data-rb-table="holes"]`, `table[data-rb-table="parts"]` and `table[data-rb-sortable]` get a button in each heading.
 * Rows of the hole table carry `data-hole` and `data-bore`.
 */

import { all, el } from "./dom.js";
import { next, sorted } from "./sorting.js";

/** @typedef {import("./sorting.js").Direction} Direction */

const SORTABLE = 'table[data-rb-table="holes"], table[data-rb-table="parts"], table[data-rb-sortable]';

/** @param {ParentNode} page */
export function startTables(page) {
  for (const table of all(page, SORTABLE, HTMLTableElement)) makeSortable(table);
  for (const table of all(page, 'table[data-rb-table="holes"]', HTMLTableElement)) addBoreFilter(table, page);
}

/** @param {HTMLTableElement} table */
function makeSortable(table) {
  const body = table.tBodies[0];
  const headings = [...(table.tHead?.rows[0]?.cells ?? [])];
  if (!body || body.rows.length < 2) return;
  const original = [...body.rows];
  headings.forEach((heading, column) => {
    const button = el("button", { type: "button", class: "rb-sort" }, ...heading.childNodes);
    heading.replaceChildren(button);
    button.addEventListener("click", () => {
      const direction = next(/** @type {Direction} */ (heading.getAttribute("aria-sort") ?? "none"));
      for (const other of headings) other.removeAttribute("aria-sort");
      if (direction !== "none") heading.setAttribute("aria-sort", direction);
      body.append(...sorted(original, (row) => row.cells[column]?.textContent ?? "", direction));
    });
  });
}

/**
 * @param {HTMLTableElement} table
 * @param {ParentNode} page
 */
function addBoreFilter(table, page) {
  const rows = all(table, "tr[data-bore]", HTMLTableRowElement);
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const row of rows) counts.set(boreOf(row), (counts.get(boreOf(row)) ?? 0) + 1);
  if (counts.size < 2) return;
  const bores = sorted([...counts.keys()], (bore) => bore, "ascending");
  const select = el(
    "select",
    {},
    el("option", { value: "" }, "all"),
    ...bores.map((bore) => el("option", { value: bore }, `${bore} (${counts.get(bore)})`)),
  );
  const said = el("span", { role: "status" });
  const tools = el("p", { class: "rb-table-tools" }, el("label", {}, "Bore, mm: ", select), " ", said);
  (table.closest(".rb-scroll") ?? table).before(tools);

  const show = () => {
    const shown = new Set();
    for (const row of rows) {
      row.hidden = select.value !== "" && boreOf(row) !== select.value;
      if (!row.hidden) shown.add(row.dataset["hole"]);
    }
    said.textContent = select.value ? `${shown.size} of ${rows.length} holes` : "";
    for (const hole of page.querySelectorAll("svg [data-address]")) {
      hole.classList.toggle("is-dimmed", !shown.has(hole.getAttribute("data-address") ?? undefined));
    }
  };
  select.addEventListener("change", show);
  /** @param {string} hash */
  const seek = (hash) => {
    if (!rows.some((row) => row.hidden && hash.toUpperCase() === `#${row.dataset["hole"]}`)) return;
    select.value = "";
    show();
  };
  addEventListener("hashchange", () => seek(location.hash));
  // A link to the hole that the address names already changes no hash.
  page.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest('a[href^="#"]') : null;
    seek(link?.getAttribute("href") ?? "");
  });
}

/**
 * What the hole table says of a hole, with its headings: `R9. String: m9 + c1 shared. Bore: 2.7.`
 * @param {HTMLTableRowElement} row
 */
export function describeRow(row) {
  const headings = [...(row.closest("table")?.tHead?.rows[0]?.cells ?? [])].map(tidy);
  const cells = [...row.cells].map(tidy);
  const rest = cells.map((cell, at) => (at && cell ? `${headings[at]}: ${cell}.` : "")).filter(Boolean);
  return [`${cells[0]}.`, ...rest].join(" ");
}

/** @param {Element} element */
function tidy(element) {
  return (element.textContent ?? "").replace(/\s+/g, " ").trim();
}

/** @param {HTMLTableRowElement} row */
function boreOf(row) {
  return row.dataset["bore"] ?? "";
}
