/**
 * A draft as YAML: in the order of the guide, exceptions in short, the walk folded. Whatever a person typed is
 * quoted where it could be read as anything else (YAML 1.2).
 */

import { entries, isMapping, wordsOf } from "./draft_written.js";
import { scalar, UNSEEN, wellFormed } from "./yaml_text.js";

/** @typedef {import("./draft_written.js").Draft} Draft */

const [WIDTH, LONGEST] = [76, 100];
const ORDER = [
  "format", "name", "maker", "sport", "aliases", "year", "variant_of", "head", "overall_mm", "rim_depth_mm", "mains",
  "crosses", "spacing_mm", "walk", "places_mm", "left", "stringing", "bore_mm", "fitted", "strips", "tension_limit",
  "measured", "confirmed", "note",
]; // prettier-ignore
const IN_LINES = ["fitted", "strips", "confirmed"];
const DAY = /^\d{4}-\d{2}-\d{2}$/;
const TENSION = /^\d{1,3}(\.\d{1,2})? (lb|kg|N)$/;

/** The line by which an editor finds the schema of a map, as seen from where maps lie. */
export const MODELINE = "# yaml-language-server: $schema=../../generator/rimbook/schemas/map.schema.json";

/**
 * @param {Draft} draft
 * @returns {string}
 */
export function writeYaml(draft) {
  const keys = [...ORDER, ...Object.keys(draft).filter((key) => !ORDER.includes(key))];
  const lines = keys.flatMap((key) => (isNothing(draft[key]) ? [] : entry(key, draft[key], "")));
  return [MODELINE, ...lines, ""].join("\n");
}

/** @param {unknown} value */
function isNothing(value) {
  if (value === undefined || value === null || value === "") return true;
  if (Array.isArray(value)) return value.length === 0;
  return isMapping(value) && entries(value).length === 0;
}

/**
 * @param {string} key
 * @param {any} value
 * @param {string} indent
 * @returns {string[]}
 */
function entry(key, value, indent) {
  const head = `${indent}${keyWord(key)}:`;
  const inner = `${indent}  `;
  if (key === "walk" && typeof value === "string" && isWalk(value)) return [`${head} >-`, ...folded(value, inner)];
  if (key === "note" && isFoldable(value)) return [`${head} >-`, ...value.split("\n").flatMap((line, at) => [...(at ? [""] : []), ...folded(line, inner)])];
  if (key === "left") return [head, ...entries(value).flatMap(([name, each]) => entry(name, each, inner))];
  if (key === "fitted" && pairs(value).length === 1) return [`${head} ${flow(new Map(pairs(value)))}`];
  if (key === "fitted") return [head, ...pairs(value).map(([name, each]) => `${inner}${keyWord(name)}: ${flow(each)}`)];
  if (IN_LINES.includes(key) && Array.isArray(value)) return [head, ...value.map((each) => `${inner}- ${flow(each)}`)];
  if (key === "bore_mm" || key === "rim_depth_mm") value = byHole(value);
  if (isMapping(value) && `${head} ${flow(value)}`.length > LONGEST) {
    return [head, ...entries(value).flatMap(([name, each]) => (isNothing(each) ? [] : entry(name, each, inner)))];
  }
  return wrapped(head, isMapping(value) || Array.isArray(value) ? flow(value) : lone(value), inner);
}

/**
 * @param {string} head
 * @param {string} text
 * @param {string} inner
 * @returns {string[]} one line, or as many as the width asks of a list
 */
function wrapped(head, text, inner) {
  const line = `${head} ${text}`;
  if (line.length <= LONGEST || !/^\[[-\d., a-z[\]]*\]$/.test(text)) return [line];
  return [`${head} [`, ...folded(text.slice(1, -1), inner), `${inner.slice(2)}]`];
}

/**
 * Lines of `fitted`, in their order.
 * @param {any} value
 * @returns {[string, any][]}
 */
export function pairs(value) {
  return Array.isArray(value) ? value : entries(value ?? {});
}

/**
 * The default first, then lengths from the smallest, then the unknown.
 * @param {any} value
 */
function byHole(value) {
  if (!isMapping(value)) return value;
  const rank = (/** @type {string} */ key) => (key === "default" ? -1 : key === "unknown" ? Infinity : Number(key));
  return new Map(entries(value).sort(([a], [b]) => rank(a) - rank(b)));
}

/** @param {any} value of a line of its own */
function lone(value) {
  if (typeof value !== "string") return flow(value);
  return TENSION.test(value) || value === "unknown" ? value : scalar(value);
}

/**
 * @param {any} value inside a line
 * @returns {string}
 */
function flow(value) {
  if (Array.isArray(value)) return `[${value.map(flow).join(", ")}]`;
  if (isMapping(value)) {
    const inside = entries(value).filter(([, each]) => !isNothing(each));
    return `{${inside.map(([key, each]) => `${keyWord(key)}: ${key === "on" && isDay(each) ? each : flow(each)}`).join(", ")}}`;
  }
  if (typeof value === "string") {
    return value === "unknown" || isSelector(value) ? value : scalar(value);
  }
  return String(value);
}

/** @param {unknown} value */
function isDay(value) {
  return typeof value === "string" && DAY.test(value);
}

/** @param {string} word such as `8-11`: no number, no day, nothing else to any reader */
function isSelector(word) {
  return /^([RL]?)[1-9]\d{0,3}-\1[1-9]\d{0,3}$/.test(word);
}

/** @param {string} key */
function keyWord(key) {
  return /^\d{1,4}(\.\d{1,9})?$/.test(key) || isSelector(key) || /^bore \d{1,4}(\.\d{1,9})?$/.test(key) || key === "unknown" || key === "on"
    ? key
    : scalar(key);
}

/** @param {string} text */
function isWalk(text) {
  const words = wordsOf(text);
  return words.length > 0 && words.every((word) => /^[a-z0-9+.]+$/i.test(word));
}

/** @param {unknown} text whether it keeps its meaning when lines are folded */
function isFoldable(text) {
  if (typeof text !== "string" || text.length < 50 || text.search(UNSEEN) >= 0 || wellFormed(text) !== text) return false;
  return text.split("\n").every((line) => /^\S( ?\S)*$/.test(line)) && !/[\x00-\x09\x0b-\x1f]/.test(text);
}

/**
 * @param {string} text
 * @param {string} indent
 * @returns {string[]}
 */
function folded(text, indent) {
  /** @type {string[]} */
  const lines = [];
  // Not at a blank within a pair, as in `[0, 254], [19.5, 251.5]`.
  for (const word of text.split(/ (?![^[\]]*\])/)) {
    const last = lines[lines.length - 1];
    if (last !== undefined && last.length + word.length < WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(indent + word);
  }
  return lines;
}
