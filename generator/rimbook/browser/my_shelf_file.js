/**
 * All that was typed on the page of a shelf, as one file and back: a table with the columns `kind`, `name`,
 * `value`. A row about the same thing takes the place of what is there; nothing else is lost.
 */

import { headed, readCsv, uneven, writeCsv } from "./csv.js";
import { percentOf, readOptional, readService, readShare, readWeeks } from "./my_shelf_read.js";
import { isSlug, textOf } from "./my_shelf_state.js";
import { rules } from "./shelf_terms.js";

/** @typedef {import("./csv.js").Fault} Fault */
/** @typedef {import("./my_shelf_read.js").Read} Read */
/** @typedef {import("./my_shelf_state.js").KeptFrame} KeptFrame */
/** @typedef {import("./my_shelf_state.js").Limits} Limits */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */

export const COLUMNS = ["kind", "name", "value"];
const KINDS = ["shelf", "frame", "count", "restrings", "term", "share_percent", "used"];
const TERMS = ["lead_weeks", "review_weeks", "service_percent", "counted_rates"];
const USED = /^(\d{1,7}) in (\d{1,4}(?:\.\d{1,4})?) weeks?$/;

/** @param {MyShelf} shelf */
export function writeShelf({ frames, terms, used, counted, club }) {
  const { weeksOfYear } = rules();
  const row = (/** @type {string} */ kind, /** @type {string} */ name, /** @type {number | string | null} */ value) =>
    value === null || value === "" ? [] : [[kind, name, String(value)]];
  const percent = (/** @type {number | null} */ share) => (share === null ? null : percentOf(share));
  return writeCsv([
    COLUMNS,
    ...row("shelf", "name", club),
    ...frames.flatMap(({ slug, name, count, restrings }) => [
      ["frame", slug, name],
      ...row("count", slug, count),
      ...row("restrings", slug, restrings),
    ]),
    ...row("term", "lead_weeks", terms.lead),
    ...row("term", "review_weeks", terms.review),
    ...row("term", "service_percent", percent(terms.service)),
    ...Object.entries(terms.shares).flatMap(([kind, share]) => row("share_percent", kind, percent(share))),
    ...used.map(({ part, count, years }) => ["used", part, `${count} in ${Number((years * weeksOfYear).toFixed(4))} weeks`]),
    ...row("term", "counted_rates", counted ? "yes" : null),
  ]);
}

/**
 * @param {string} text
 * @param {MyShelf} shelf
 * @param {Limits} limits
 * @param {readonly string[]} kinds kinds of part that have a share
 * @returns {{shelf: MyShelf, faults: Fault[], taken: number}} and how many rows were taken over
 */
export function addShelf(text, shelf, limits, kinds) {
  const { rows, faults } = readCsv(text);
  const { row: first, columns, others, missing, found } = headed(rows, COLUMNS);
  if (missing.length) {
    const message = `The heading lacks ${missing.join(" and ")}: expected ${COLUMNS.join(", ")}; ${found.slice(0, 206)}.`;
    return { shelf, faults: [{ row: first, message }, ...faults], taken: 0 };
  }
  const reader = new Rows(shelf, limits, kinds);
  /** @type {Map<string, number>} */
  const seen = new Map();
  let taken = 0;
  for (const { row, cells } of others) {
    const [kind, name, value] = COLUMNS.map((column) => (cells[columns.indexOf(column)] ?? "").trim());
    const about = `${kind.toLowerCase()} ${name.toLowerCase()}`;
    const before = seen.get(about);
    const message =
      uneven(cells.length, columns.length) ||
      (before
        ? `It is about the same as row ${before}, which is kept.`
        : reader.take(kind.toLowerCase(), name.toLowerCase(), value));
    if (message) faults.push({ row, message });
    else {
      seen.set(about, row);
      taken += 1;
    }
  }
  return { shelf: reader.shelf, faults: faults.sort((a, b) => a.row - b.row), taken };
}

/** A shelf that takes rows over, one after the other. */
class Rows {
  /**
   * @param {MyShelf} shelf
   * @param {Limits} limits
   * @param {readonly string[]} kinds
   */
  constructor(shelf, limits, kinds) {
    this.old = shelf;
    this.limits = limits;
    this.kinds = kinds;
    /** @type {Map<string, KeptFrame>} */
    this.frames = new Map(shelf.frames.map((each) => [each.slug, each]));
    this.terms = { ...shelf.terms, shares: { ...shelf.terms.shares } };
    this.used = new Map(shelf.used.map((each) => [each.part, each]));
    this.counted = shelf.counted;
    this.club = shelf.club;
  }

  /** @returns {MyShelf} */
  get shelf() {
    const { terms, counted, club } = this;
    return { ...this.old, frames: [...this.frames.values()], terms, used: [...this.used.values()], counted, club };
  }

  /**
   * @param {string} kind
   * @param {string} name
   * @param {string} value
   * @returns {string} what is wrong with the row, or nothing
   */
  take(kind, name, value) {
    if (kind === "shelf") return this.takeClub(name, value);
    if (kind === "frame") return this.takeFrame(name, value);
    if (kind === "count" || kind === "restrings") return this.takeNumber(kind, name, value);
    if (kind === "term") return this.takeTerm(name, value);
    if (kind === "share_percent") return this.takeShare(name, value);
    if (kind === "used") return this.takeUsed(name, value);
    return `“${cut(kind)}” is no kind of row: expected ${KINDS.join(", ")}.`;
  }

  /**
   * @param {string} name
   * @param {string} value
   */
  takeClub(name, value) {
    if (name !== "name") return `“${cut(name)}” is nothing of the shelf: expected name.`;
    this.club = textOf(value);
    return "";
  }

  /**
   * @param {string} slug
   * @param {string} name
   */
  takeFrame(slug, name) {
    if (!isSlug(slug)) return `“${cut(slug)}” is no frame: expected its short name, such as plover-76.`;
    const had = this.frames.get(slug);
    if (!had && this.frames.size >= this.limits.frames) return `There are more than ${this.limits.frames} frames.`;
    this.frames.set(slug, had ?? { slug, name: textOf(name) || slug, count: null, restrings: null });
    return "";
  }

  /**
   * @param {"count" | "restrings"} what
   * @param {string} slug
   * @param {string} value
   */
  takeNumber(what, slug, value) {
    const frame = this.frames.get(slug);
    if (!frame) return `There is no frame “${cut(slug)}”: expected a row of kind frame before this one.`;
    const asks = what === "count" ? { unit: "", whole: true } : { unit: " of restrings a year" };
    return this.read(readOptional(value, { most: this.limits[what], ...asks }), (number) =>
      this.frames.set(slug, { ...frame, [what]: number }),
    );
  }

  /**
   * @param {string} name
   * @param {string} value
   */
  takeTerm(name, value) {
    const { terms } = this;
    if (name === "lead_weeks") return this.read(readWeeks(value, this.limits.weeks), (number) => (terms.lead = number));
    if (name === "review_weeks") return this.read(readWeeks(value, this.limits.weeks), (number) => (terms.review = number));
    if (name === "service_percent") return this.read(readService(value), (chance) => (terms.service = chance));
    if (name !== "counted_rates") return `“${cut(name)}” is no term: expected ${TERMS.join(", ")}.`;
    if (value !== "yes" && value !== "no") return `“${cut(value)}” will not do: expected yes or no.`;
    this.counted = value === "yes";
    return "";
  }

  /**
   * @param {string} kind
   * @param {string} value
   */
  takeShare(kind, value) {
    if (!this.kinds.includes(kind)) return `“${cut(kind)}” is no kind of part: expected ${this.kinds.join(", ")}.`;
    return this.read(readShare(value), (share) => {
      if (share === null) delete this.terms.shares[kind];
      else this.terms.shares[kind] = share;
    });
  }

  /**
   * @param {string} part
   * @param {string} value
   */
  takeUsed(part, value) {
    if (!isSlug(part)) return `“${cut(part)}” is no id of a part: expected one such as barrel-21-short.`;
    const { weeksOfYear, used } = rules();
    const [, count, weeks] = USED.exec(value) ?? [];
    if (!count || !(Number(weeks) > 0) || Number(weeks) > used.mostWeeks || Number(count) > used.mostCount) {
      return `“${cut(value)}” will not do: expected a count and a time, such as 20 in 52 weeks.`;
    }
    this.used.set(part, { part, count: Number(count), years: Number(weeks) / weeksOfYear });
    return "";
  }

  /**
   * @param {Read} read
   * @param {(value: number | null) => void} take
   */
  read(read, take) {
    if ("problem" in read) return read.problem;
    take(read.value);
    return "";
  }
}

/** @param {string} text as much of it as a message can carry */
function cut(text) {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
