/**
 * A sheet as a short text for the address bar, and back. Small letters, digits, points and low lines only,
 * so it needs no escaping anywhere:
 *
 *     1.k3f9a.f112.c12.ax4r1_r8q0l9.g1b2r9.sc3r12.z7q
 *
 * The edition; what tells this version of the map from others; frame check; way of working and minutes;
 * then for each kind of mark its letter (and turns) and its holes; last, a check of all that stands before.
 * Each hole has two signs before its address that tell it from others, so that it is known again in
 * another version of the map. Sound holes come in rows, `r1_r8`, with two signs for the whole row.
 */

import { digest, fingerprint, marksOfHoles, signs } from "./sheet_frame.js";
import { CHECKS, EMPTY, FOUND, MOST_MINUTES, put, SEEN, WAYS } from "./sheet_state.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_state.js").Mark} Mark */
/** @typedef {import("./sheet_state.js").Doubt} Doubt */

const EDITION = "1";
const MOST_CHARACTERS = 4000;
const MOST_SHOWN = 40;
const LETTERS = { sound: "a", grooved: "g", split: "s", missing: "m", low: "l" };
const GROUP = /^([agsml])(\d?)((?:[a-z][0-9a-z][rl]\d{1,3}(?:_[rl]\d{1,3})?)+)$/;
const ENTRY = /([a-z][0-9a-z])([rl]\d{1,3})(?:_([rl]\d{1,3}))?/g;

/**
 * @typedef {object} Read
 * @property {Sheet} sheet as much as could be read
 * @property {boolean} isOtherMap whether it was made for another version of the map, or another frame
 * @property {string[]} problems in words
 */

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 */
export function encode(frame, sheet) {
  const known = marksOfHoles(frame);
  const order = frame.holes.map(({ address }) => address);
  const way = sheet.way === "unhurried" ? "u" : `c${sheet.minutes ?? ""}`;
  const checks = CHECKS.map((check) => FOUND.indexOf(sheet.checks[check])).join("");
  /** @type {Map<string, string>} */
  const groups = new Map();
  const add = (/** @type {Mark} */ { seen, turns }, /** @type {string} */ entry) => {
    const group = LETTERS[seen] + (seen === "grooved" ? turns : "");
    groups.set(group, (groups.get(group) ?? "") + entry);
  };
  for (const row of soundRows(order, sheet)) {
    const [from, to] = [row[0], row[row.length - 1]];
    add({ seen: "sound", turns: 0 }, codeOf(row, known) + short(from, to));
  }
  for (const address of order) {
    const own = sheet.marks[address];
    if (own && own.seen !== "sound") add(own, codeOf([address], known) + short(address, address));
  }
  for (const { mark: own, from, to, code } of sheet.doubts) add(own, code + short(from, to));
  const tokens = [...groups].map(([group, entries]) => group + entries).sort();
  const body = [EDITION, fingerprint(frame), `f${checks}`, way, ...tokens].join(".");
  return `${body}.z${digest(body, 2)}`;
}

/**
 * Reads whatever can be read, and says what could not. Never throws.
 * @param {SheetFrame} frame
 * @param {string} text
 * @returns {Read}
 */
export function decode(frame, text) {
  /** @type {string[]} */
  const problems = [];
  let given = text.trim().toLowerCase();
  if (!given) return { sheet: EMPTY, isOtherMap: false, problems };
  if (given.length > MOST_CHARACTERS) {
    problems.push(`The marks in the address are longer than ${MOST_CHARACTERS} letters: the rest was left out.`);
    given = given.slice(0, MOST_CHARACTERS);
  }
  const [edition, print, ...tokens] = given.split(".");
  if (edition !== EDITION) {
    const other = `They are of edition ${edition}; this page reads edition ${EDITION}: open it anew.`;
    const why = /^\d+$/.test(edition) ? other : "The address does not begin like marks.";
    problems.push(`The marks in the address cannot be read. ${why}`);
    return { sheet: EMPTY, isOtherMap: false, problems };
  }
  const last = tokens.at(-1) ?? "";
  const isWhole = last === `z${digest(given.slice(0, given.length - last.length - 1), 2)}`;
  if (!isWhole) problems.push("The address was cut short or changed on the way: look whether all marks are there.");
  const reading = new Reading(frame);
  const unread = tokens.filter((token) => !/^z..$/.test(token) && !reading.take(token));
  for (const token of unread) {
    problems.push(`“${token.slice(0, MOST_SHOWN)}” in the address is not understood and was left out.`);
  }
  return { sheet: reading.sheet, isOtherMap: print !== fingerprint(frame), problems };
}

class Reading {
  /** @param {SheetFrame} frame */
  constructor(frame) {
    this.known = marksOfHoles(frame);
    this.order = frame.holes.map(({ address }) => address);
    this.sheet = EMPTY;
  }

  /**
   * @param {string} token
   * @returns {boolean} whether it was understood
   */
  take(token) {
    const checks = /^f([012])([012])([012])$/.exec(token);
    if (checks) {
      const found = CHECKS.map((check, at) => [check, FOUND[Number(checks[at + 1])]]);
      this.sheet = { ...this.sheet, checks: Object.fromEntries(found) };
      return true;
    }
    const way = /^(?:u|c(\d{0,3}))$/.exec(token);
    if (way) {
      const minutes = way[1] ? Math.min(MOST_MINUTES, Number(way[1])) : null;
      this.sheet = { ...this.sheet, way: WAYS[token === "u" ? 0 : 1], minutes };
      return true;
    }
    const group = GROUP.exec(token);
    if (!group) return false;
    const seen = SEEN.find((each) => LETTERS[each] === group[1]) ?? "sound";
    for (const [, code, from, to = from] of group[3].matchAll(ENTRY)) {
      this.put({ seen, turns: Number(group[2]) }, from.toUpperCase(), to.toUpperCase(), code);
    }
    return true;
  }

  /**
   * Gives a mark to the hole or the row it was made for, or keeps it as a doubt.
   * @param {Mark} own
   * @param {string} from
   * @param {string} to
   * @param {string} code
   */
  put(own, from, to, code) {
    const row = between(this.order, from, to);
    if (row.length && codeOf(row, this.known) === code) this.sheet = put(this.sheet, row, own);
    else this.sheet = { ...this.sheet, doubts: [...this.sheet.doubts, { mark: own, from, to, code }] };
  }
}

/**
 * Where the hole of a doubtful mark may be now: holes with the same strings on the same side.
 * @param {SheetFrame} frame
 * @param {Doubt} doubt
 * @returns {string[]} addresses; empty where it is not known again
 */
export function guesses(frame, { from, to, code }) {
  if (from !== to) return [];
  const alike = [...marksOfHoles(frame)].filter(([address, own]) => own === code && address[0] === from[0]);
  return alike.map(([address]) => address);
}

/**
 * @param {readonly string[]} order
 * @param {Sheet} sheet
 * @returns {string[][]} sound holes that follow each other clockwise
 */
function soundRows(order, sheet) {
  /** @type {string[][]} */
  const rows = [];
  order.forEach((address, at) => {
    if (sheet.marks[address]?.seen !== "sound") return;
    if (at > 0 && sheet.marks[order[at - 1]]?.seen === "sound") rows[rows.length - 1].push(address);
    else rows.push([address]);
  });
  return rows;
}

/**
 * @param {readonly string[]} order
 * @param {string} from
 * @param {string} to
 */
function between(order, from, to) {
  const [start, end] = [order.indexOf(from), order.indexOf(to)];
  return start < 0 || end < start ? [] : order.slice(start, end + 1);
}

/**
 * @param {readonly string[]} row
 * @param {ReadonlyMap<string, string>} known
 */
function codeOf(row, known) {
  const codes = row.map((address) => known.get(address) ?? "");
  return codes.length === 1 ? codes[0] : signs(codes.join(" "));
}

/**
 * @param {string} from
 * @param {string} to
 */
function short(from, to) {
  return (from === to ? from : `${from}_${to}`).toLowerCase();
}
