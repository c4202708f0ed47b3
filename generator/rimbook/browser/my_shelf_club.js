/** The shelf as a club's file, with which `rimbook shelf`, labels and charts work. */

import { slugOf } from "./index_data.js";
import { scalar } from "./yaml_text.js";

/** @typedef {import("./buy_list.js").Shelved} Shelved */
/** @typedef {import("./my_shelf_book.js").ShelfBook} ShelfBook */
/** @typedef {import("./my_shelf_state.js").MyShelf} MyShelf */

export const UNNAMED = "My shelf";

/**
 * What the file is called: the name of the club as a short name.
 * @param {MyShelf} shelf
 */
export function clubSlug({ club }) {
  return slugOf(club.normalize("NFKD").replace(/\p{M}/gu, "")).slice(0, 60).replace(/-$/, "") || "my-shelf";
}

/**
 * Frames and parts that the book has not are left out, and named in a comment: no file may name them. Terms
 * that nobody typed are left out as well: the same is then assumed. The stock is as of `day`, such as 2026-10-04.
 * @param {MyShelf} shelf
 * @param {readonly Shelved[]} stock
 * @param {ShelfBook} book
 * @param {string} day
 */
export function clubFile({ frames, terms, club }, stock, book, day) {
  const isGone = (/** @type {string} */ slug) => book.index !== null && !book.frames.has(slug);
  const known = frames.filter(({ slug }) => !isGone(slug));
  const there = stock.filter(({ part }) => book.hasPart(part));
  const left = [
    ...frames.filter(({ slug }) => isGone(slug)).map(({ slug }) => slug),
    ...stock.filter(({ part }) => !book.hasPart(part)).map(({ part }) => part),
  ];
  const shares = Object.entries(terms.shares).map(([kind, share]) => `${kind}: ${share}`);
  const own = [
    ...line("  lead_time_weeks", terms.lead),
    ...line("  review_weeks", terms.review),
    ...line("  service_level", terms.service),
    ...(shares.length ? [`  shares: {${shares.join(", ")}}`] : []),
    ...(there.length ? ["  stock:", ...there.map(({ part, count }) => `    ${scalar(part)}: ${count}`)] : []),
  ];
  return [
    "format: 1",
    `name: ${scalar(club || UNNAMED)}`,
    ...(there.length ? [`on: ${day}`] : []),
    ...(left.length ? [`# Left out, for the book has them not: ${left.join(", ")}.`] : []),
    "frames:",
    ...known.map((frame) => `  - ${frameWords(frame)}`),
    ...(own.length ? ["shelf:", ...own] : ["shelf: {}"]),
    "",
  ].join("\n");
}

/** @param {import("./my_shelf_state.js").KeptFrame} frame */
function frameWords({ slug, count, restrings }) {
  const more = [...line("count", count), ...line("restrings_per_year", restrings)];
  return `{${[`frame: ${scalar(slug)}`, ...more].join(", ")}}`;
}

/**
 * @param {string} key
 * @param {number | null} value
 */
function line(key, value) {
  return value === null ? [] : [`${key}: ${value}`];
}
