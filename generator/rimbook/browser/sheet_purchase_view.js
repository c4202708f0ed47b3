/** A purchase in words and as a table: what is bought, why, what else could be, what is left. */

import { el } from "./dom.js";
import { shown } from "./money.js";
import { packName } from "./sheet_charge.js";
import { whereOf } from "./sheet_clock_view.js";
import { listed } from "./words.js";

/** @typedef {import("./buy_solver.js").Line} Line */
/** @typedef {import("./buy_solver.js").Purchase} Purchase */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./shop.js").Shop} Shop */

export class Naming {
  /**
   * @param {SheetFrame} frame
   * @param {Job} job
   * @param {Shop} shop
   */
  constructor(frame, job, shop) {
    this.frame = frame;
    this.needs = new Map(job.needs.map((need) => [need.id, need]));
    this.list = shop.list;
  }

  /** @param {number} amount */
  money(amount) {
    return shown(amount, this.list.currency);
  }

  /** @param {string} part */
  part(part) {
    return this.frame.names[part] ?? part;
  }

  /** @param {Line} line */
  pack({ offer }) {
    const { part, count, seller } = this.list.sold[Number(offer)];
    const name = packName(this.part(part), count);
    return seller ? `${name} (${seller})` : name;
  }

  /** @param {Purchase} purchase */
  table({ lines, price }) {
    const rows = lines.map((line) =>
      el(
        "tr",
        {},
        el("th", { scope: "row" }, this.pack(line)),
        el("td", { class: "rb-number" }, String(line.times)),
        el("td", { class: "rb-number" }, this.money(this.list.sold[Number(line.offer)].price * line.times)),
        el("td", { class: "rb-words" }, this.why(line)),
      ),
    );
    const heads = ["Buy", "How many", "Price", "Why"].map((head, at) =>
      el("th", { scope: "col", class: at === 1 || at === 2 ? "rb-number" : false }, head),
    );
    const foot = el(
      "tr",
      {},
      el("th", { scope: "row" }, "Together"),
      el("td", {}),
      el("td", { class: "rb-number" }, this.money(price)),
      el("td", {}),
    );
    return el(
      "div",
      { "class": "rb-scroll", "role": "region", "aria-label": "What to buy, line by line", "tabindex": "0" },
      el(
        "table",
        { class: "rb-table" },
        el("thead", {}, el("tr", {}, ...heads)),
        el("tbody", {}, ...rows),
        el("tfoot", {}, foot),
      ),
    );
  }

  /**
   * What an offer is for, and what cannot be had without it.
   * @param {Line} line
   */
  why({ offer, serves, forcedBy }) {
    const forced = serves.filter(
      (id) => forcedBy.includes(id) || this.isOnlyIn(this.list.sold[Number(offer)].part, id),
    );
    const others = serves.filter((id) => !forced.includes(id));
    const only = forced.length ? `nothing else on your list repairs ${this.places(forced)}` : "";
    const also = others.length ? `${forced.length ? "it also serves" : "for"} ${this.places(others)}` : "";
    return [only, also].filter(Boolean).join("; ");
  }

  /**
   * Whether nothing else that is sold meets a need.
   * @param {string} sold a part or a set
   * @param {string} id of a need
   */
  isOnlyIn(sold, id) {
    const parts = this.needs.get(id)?.parts ?? [];
    const meets = (/** @type {string} */ own) => parts.some((part) => part === own || this.frame.sets[own]?.[part]);
    return this.list.sold.every((row) => row.part === sold || !meets(row.part));
  }

  /** @param {readonly string[]} ids of needs */
  places(ids) {
    return listed(
      ids.map((id) => {
        const pieces = this.needs.get(id)?.pieces ?? [];
        const [first] = pieces;
        const kind = first !== undefined && this.frame.pieces[first].kind === "strip" ? "the strip " : "";
        return kind + whereOf(this.frame, pieces);
      }),
    );
  }

  /**
   * @param {string} title
   * @param {Readonly<Record<string, number>>} pieces
   */
  pieces(title, pieces) {
    const some = Object.entries(pieces).filter(([, count]) => count > 0);
    if (!some.length) return null;
    return el(
      "p",
      {},
      el("strong", {}, title),
      `: ${listed(some.map(([part, count]) => `${count} × ${this.part(part)}`))}.`,
    );
  }

  /**
   * @param {Purchase} purchase
   * @param {number} price of the cheapest
   * @param {boolean} isProven
   */
  next(purchase, price, isProven) {
    const lines = listed(purchase.lines.map((line) => `${line.times} × ${this.pack(line)}`));
    const extra = purchase.price - price;
    const more = extra ? `${this.money(extra)} more` : "the same price, but more purchases or more left over";
    const best = isProven ? "Next best" : "Next best found";
    return el("p", {}, el("strong", {}, best), `: ${lines}, ${this.money(purchase.price)}: ${more}.`);
  }
}
