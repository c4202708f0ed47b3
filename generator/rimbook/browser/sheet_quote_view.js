/** What the player pays, line by line, with one total. */

import { el, fill } from "./dom.js";
import { shown } from "./money.js";
import { minutesWords, QUOTE_WORDS } from "./sheet_words.js";
import { listed } from "./words.js";

/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./sheet_jobs.js").OwnJobs} OwnJobs */
/** @typedef {import("./sheet_quote.js").QuoteLine} QuoteLine */

/**
 * @param {OwnJobs} jobs
 * @param {string} prices address of the page of prices
 */
export function quoteView(jobs, prices) {
  const said = el("p", { class: "rb-work-total", role: "status" });
  const lines = el("div", {});
  return {
    element: el("section", { "aria-label": "Quote" }, el("h3", {}, "Quote"), said, lines),
    /** @param {Job} job */
    show(job) {
      const says = inShort(job);
      if (said.textContent !== says) said.textContent = says;
      fill(lines, job.quote.lines.length > 0 && table(job), ...missing(job, jobs.shop().terms.hourly, prices));
    },
  };
}

/** @param {Job} job */
function inShort({ quote, currency, work, isPriced, isSettled }) {
  if (!work.length) return "Nothing to charge.";
  if (!isSettled) return "Working out the price …";
  return `${isPriced ? "Total" : "So far"}: ${shown(quote.total, currency)}`;
}

/** @param {Job} job */
function table({ quote, currency }) {
  const row = (/** @type {string} */ what, /** @type {string} */ time, /** @type {number} */ amount) =>
    el(
      "tr",
      {},
      el("th", { scope: "row" }, what),
      el("td", {}, time),
      el("td", { class: "rb-number" }, shown(amount, currency)),
    );
  const heads = ["For", "Time", "Amount"].map((head, at) =>
    el("th", { scope: "col", class: at === 2 ? "rb-number" : false }, head),
  );
  return el(
    "div",
    { "class": "rb-scroll", "role": "region", "aria-label": "Quote, line by line", "tabindex": "0" },
    el(
      "table",
      { class: "rb-table" },
      el("thead", {}, el("tr", {}, ...heads)),
      el(
        "tbody",
        {},
        ...quote.lines.map((line) => row(lineWords(line), line.seconds ? minutesWords(line.seconds) : "", line.amount)),
      ),
      el("tfoot", {}, row("Total", "", quote.total)),
    ),
  );
}

/**
 * @param {QuoteLine} line
 * @returns {string} `3 single parts replaced`
 */
export function lineWords({ what, name, count }) {
  if (what === "part") return `${count} × ${name}`;
  const words = QUOTE_WORDS[what][count === 1 ? 0 : 1];
  return what === "set-up" || what === "least charge" || what === "rounding" ? words : `${count} ${words}`;
}

/**
 * @param {Job} job
 * @param {number} hourly
 * @param {string} prices
 */
function missing({ work, unpriced, isSettled }, hourly, prices) {
  if (!work.length || !isSettled) return [];
  const says = [hourly ? "" : "the hourly rate", unpriced.length ? `a price for ${listed(unpriced)}` : ""].filter(
    Boolean,
  );
  if (!says.length) return [];
  return [
    el("p", { class: "rb-note" }, `Still left out: ${listed(says)}. `, el("a", { href: prices }, "Enter it"), "."),
  ];
}
