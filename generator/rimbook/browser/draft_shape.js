/** Whether a draft has the keys of a map, and each holds the sort of value that it is for. */

import { address } from "./draft_address.js";
import { asText, nearest, shown, unquoted } from "./draft_text.js";
import { entries, holds, isMapping, valueAt } from "./draft_written.js";

/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */
/** @typedef {import("./draft_problem.js").Finding} Finding */

/**
 * What a value must be, as the build hands it over.
 * @typedef {object} Shape
 * @property {"keys" | "lines" | "list" | "any" | "text" | "whole" | "number" | "word" | "own"} is
 * @property {Record<string, Shape>} [keys]
 * @property {string[]} [needs] keys that must be there
 * @property {Shape} [each] of the lines or of the list
 * @property {any[]} [of] the shapes or the words to choose from
 * @property {boolean} [trim] whether blanks at the ends count for nothing
 * @property {number} [least] letters or items
 * @property {number} [most]
 * @property {string} [form] a regular expression
 * @property {number} [above]
 * @property {number} [from]
 * @property {number} [to]
 * @property {string} [check] the name of a check of our own
 * @property {string} [says] what that or the form expects
 * @property {boolean} [empty] whether nothing at all will do as well
 */

/**
 * What is wrong at a path, and what was expected there.
 * @typedef {object} Fault
 * @property {"missing" | "unknown" | "word" | "value"} is
 * @property {Path} path
 * @property {string} [expected]
 */

/** More tell nothing new. */
const MOST_REPORTED = 200;

/**
 * @param {Draft} draft
 * @param {Shape} shape
 * @param {number} longest mm that a length may have
 * @returns {Finding[]}
 */
export function shapeFindings(draft, shape, longest) {
  const faults = faultsOf(draft, shape, [], longest).slice(0, MOST_REPORTED);
  const last = new Map(faults.map((fault) => [JSON.stringify(fault.path), fault]));
  return [...last.values()].map((fault) => finding(draft, shape, fault));
}

/**
 * @param {Draft} draft
 * @param {Shape} shape
 * @param {Fault} fault
 * @returns {Finding}
 */
function finding(draft, shape, { is, path, expected }) {
  const rule = "shape";
  const key = asText(path[path.length - 1] ?? "");
  if (is === "missing") return { rule, path, message: `The key ${shown(key)} is missing.` };
  if (is === "unknown") {
    const choices = Object.keys(shapeAt(shape, path.slice(0, -1))?.keys ?? {});
    const message = `There is no key ${shown(key)} here.`;
    return { rule, path, message, isKey: true, expected: choices.join(", "), nearest: nearest(key, choices) };
  }
  const found = valueAt(draft, path);
  const phrase = path.map((step) => (typeof step === "number" ? step + 1 : step)).join(".") || "The file";
  const message = `${unquoted(phrase)} cannot be ${brief(found)}.`;
  const near = is === "word" ? nearest(asText(found), (expected ?? "").split(", ")) : null;
  const isPlain = typeof found === "number" || typeof found === "boolean";
  const tip = expected === "text" && isPlain ? `Put it in quotes: "${brief(found)}".` : null;
  return { rule, path, message, expected, nearest: near, tip };
}

/**
 * @param {Shape} shape
 * @param {Path} path
 * @returns {Shape | undefined}
 */
function shapeAt(shape, path) {
  /** @type {Shape | undefined} */
  let inner = shape;
  for (const step of path) inner = typeof step === "number" ? inner?.each : inner?.keys?.[step];
  return inner;
}

/**
 * @param {any} value
 * @returns {string}
 */
function brief(value) {
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (isMapping(value)) return "a mapping";
  if (value === null) return "empty";
  return typeof value === "string" ? shown(value) : unquoted(String(value));
}

/**
 * @param {any} value
 * @param {Shape} shape
 * @param {Path} path
 * @param {number} longest
 * @returns {Fault[]}
 */
function faultsOf(value, shape, path, longest) {
  if (value === null && shape.empty) return [];
  const inside = (/** @type {any} */ each, /** @type {Shape} */ asked, /** @type {string | number} */ step) =>
    faultsOf(each, asked, [...path, step], longest);
  if (shape.is === "keys" && isMapping(value)) {
    const { keys = {}, needs = [] } = shape;
    const known = Object.entries(keys).flatMap(([key, asked]) => {
      if (holds(value, key)) return inside(valueAt(value, [key]), asked, key);
      return needs.includes(key) ? [{ is: /** @type {const} */ ("missing"), path: [...path, key] }] : [];
    });
    const others = entries(value).filter(([key]) => !Object.hasOwn(keys, key));
    return [...known, ...others.map(([key]) => ({ is: /** @type {const} */ ("unknown"), path: [...path, key] }))];
  }
  const { each = shape } = shape;
  if (shape.is === "lines" && isMapping(value)) return entries(value).flatMap(([key, held]) => inside(held, each, key));
  if (shape.is === "list" && Array.isArray(value) && value.length <= (shape.most ?? Infinity)) {
    const faults = value.flatMap((item, index) => inside(item, each, index));
    if (faults.length) return faults;
  }
  const expected = expectedOf(value, shape, longest);
  const is = shape.is === "word" && typeof shape.of?.[0] === "string" ? "word" : "value";
  return expected === null ? [] : [{ is, path, expected }];
}

/**
 * What would have been right instead of a single value.
 * @param {any} value
 * @param {Shape} shape
 * @param {number} longest
 * @returns {string | null} null where the value is right
 */
function expectedOf(value, shape, longest) {
  const { is, of = [], least = 0, most = Infinity, says = "" } = shape;
  if (is === "keys" || is === "lines") return "keys and values";
  if (is === "list") {
    if (!Array.isArray(value)) return "a list";
    if (value.length > most) return `at most ${most} of them`;
    return value.length < least ? `at least ${least} of them` : null;
  }
  if (is === "any") {
    const expected = of.map((/** @type {Shape} */ each) => expectedOf(value, each, longest));
    return expected.includes(null) ? null : (expected[expected.length - 1] ?? null);
  }
  if (is === "text") return expectedText(value, shape);
  if (is === "word") {
    if (of.includes(value)) return null;
    if (typeof of[0] === "string" || of.length < 2) return of.join(", ");
    return `${of.slice(0, -1).join(", ")} or ${of[of.length - 1]}`;
  }
  if (is === "own") return OWN[shape.check ?? ""](value, longest) ? null : says;
  return expectedNumber(value, shape);
}

/**
 * @param {any} value
 * @param {Shape} shape
 */
function expectedText(value, { trim, least = 0, most = Infinity, form, says = "" }) {
  if (typeof value !== "string") return "text";
  const text = trim ? value.trim() : value;
  const { length } = [...text];
  if (length > most) return `at most ${most} characters`;
  if (length < least) return "some text";
  return form && !new RegExp(form, "u").test(text) ? says : null;
}

/**
 * @param {any} value
 * @param {Shape} shape
 */
function expectedNumber(value, { is, above, from, to }) {
  const isWhole = is === "whole";
  if (isWhole && !Number.isInteger(value)) return "a whole number";
  if (typeof value !== "number") return "a number";
  const bound = (/** @type {number} */ most) => (!isWhole && Number.isInteger(most) ? `${most}.0` : String(most));
  if (to !== undefined && value > to) return `${bound(to)} or less`;
  if (from !== undefined && value < from) return `${bound(from)} or more`;
  return above !== undefined && value <= above ? `more than ${bound(above)}` : null;
}

/** @type {Record<string, (value: any, longest: number) => boolean>} the checks of our own */
const OWN = {
  mm_or_unknown: isMmOrUnknown,
  per_hole: (value, longest) => isMapping(value) || isMmOrUnknown(value, longest),
  part_word: (value) => typeof value === "string" && value !== "",
  address: (value) => typeof value === "string" && address(value) !== null,
  tension: (value) => typeof value === "string" && /^[0-9]{1,3}(\.[0-9]{1,2})? (lb|kg|N)$/.test(value),
  iso_date: (value) => typeof value === "string" && isDate(value),
};

/**
 * @param {any} value
 * @param {number} longest
 */
function isMmOrUnknown(value, longest) {
  return value === "unknown" || isMm(value, longest);
}

/**
 * Whether a value is a number that can be a length in mm.
 * @param {any} value
 * @param {number} longest
 */
export function isMm(value, longest) {
  return typeof value === "number" && value > 0 && value <= longest;
}

/** @param {string} text as 2026-10-04 */
function isDate(text) {
  if (!/^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(text) || text < "0001") return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
