/** The ticket as it is printed: one sheet of paper. */

import { el, fill } from "./dom.js";
import { codePicture } from "./sheet_ticket_code.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./sheet_address.js").Reached} Reached */
/** @typedef {import("./sheet_ticket.js").Ticket} Ticket */
/** @typedef {import("./sheet_ticket.js").Told} Told */

/**
 * What the technician typed for this one ticket. It is kept nowhere.
 * @typedef {object} Typed
 * @property {string} player
 * @property {string} strings and tension
 * @property {string} remark
 */

/**
 * @typedef {object} Head
 * @property {string} name of the frame
 * @property {string} about maker and sport
 * @property {string} date
 */

const SEEN_KEY = "G grooved, with the quarter turns it has had; S split; M missing; L string sits low.";
const DONE_KEY = " Filled: replaced; ×: with it. Arrow: turned.";

/** With more letters than this the type is set smaller, step by step, so that all stays on one sheet. */
const LENGTHS = { "is-long": 1500, "is-longer": 2600, "is-longest": 3300 };

/**
 * @param {HTMLElement} paper
 * @param {Ticket} ticket
 * @param {Head} head
 * @param {Typed} typed
 * @param {Reached} where
 * @param {Element | null} drawing
 */
export function fillTicket(paper, ticket, head, typed, where, drawing) {
  const { ends, found, done, waits, watch, cautions } = ticket;
  fill(
    paper,
    el(
      "header",
      {},
      el("p", { class: "rb-ticket-kind" }, ends ? "Ticket: not to be strung" : "Ticket"),
      el("h4", {}, head.name),
      el("p", {}, head.about),
    ),
    el(
      "dl",
      { class: "rb-ticket-typed" },
      ...line("Player", typed.player, true),
      ...line("String and tension", typed.strings, !ends),
      ...line("Date", head.date),
    ),
    el(
      "div",
      { class: "rb-ticket-seen" },
      drawing && el("p", { class: "rb-ticket-key" }, SEEN_KEY, !ends && DONE_KEY),
      drawing,
      reopen(where),
    ),
    el(
      "div",
      { class: "rb-ticket-told" },
      ...list("Found", found),
      ...list("Done", done),
      ...list("Put off", waits),
      ...list("To watch", watch),
      ...price(ticket),
      ...(typed.remark ? [el("h5", {}, "Remark"), el("p", {}, typed.remark)] : []),
    ),
    el(
      "div",
      { class: "rb-ticket-cautions" },
      el("h5", {}, "Cautions"),
      el("ul", {}, ...cautions.map((each) => el("li", {}, each))),
    ),
  );
  const length = paper.textContent?.length ?? 0;
  for (const [name, least] of Object.entries(LENGTHS)) paper.classList.toggle(name, length > least);
}

/**
 * What nobody typed is a line to write on, or is left out.
 * @param {string} name
 * @param {string} value
 * @param {boolean} [isAsked]
 */
function line(name, value, isAsked = false) {
  if (!value && !isAsked) return [];
  return [el("div", {}, el("dt", {}, name), el("dd", { class: value ? false : "is-blank" }, value))];
}

/**
 * @param {string} title
 * @param {readonly Told[]} all
 */
function list(title, all) {
  if (!all.length) return [];
  const items = all.map(({ what, why }) => el("li", {}, el("b", {}, what), why && ` – ${why}`));
  return [el("h5", {}, title), el("ul", {}, ...items)];
}

/**
 * @param {Ticket} ticket
 * @returns {Child[]}
 */
function price({ price: given, unpriced }) {
  if (!given) return unpriced ? [el("h5", {}, "Price"), el("p", {}, unpriced)] : [];
  const row = (/** @type {string} */ what, /** @type {string} */ amount) =>
    el("tr", {}, el("th", { scope: "row" }, what), el("td", { class: "rb-number" }, amount));
  return [
    el("h5", {}, "Price"),
    el(
      "table",
      {},
      el("tbody", {}, ...given.lines.map(({ what, amount }) => row(what, amount))),
      el("tfoot", {}, row("Total", given.total)),
    ),
  ];
}

/**
 * A code where one leads anywhere, else what can be typed.
 * @param {Reached} where
 */
function reopen({ page, address, code }) {
  const picture = address && codePicture(address);
  const why = address
    ? "This sheet holds too much for a code to scan."
    : "No code to scan: this book was opened from a folder, and its address leads nowhere else.";
  return el(
    "div",
    { class: "rb-ticket-reopen" },
    picture,
    el(
      "div",
      {},
      picture
        ? el("p", {}, "Scan to open this sheet again.")
        : el("p", {}, why, " Type this on the page of the frame, below “Ticket”:"),
      !picture && el("p", { class: "rb-ticket-typable" }, code),
      el("p", {}, "Page in the book: ", el("span", { class: "rb-ticket-page" }, page)),
    ),
  );
}
