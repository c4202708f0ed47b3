/**
 * What a reader typed, understood: `plover 76 holes, shared at 9 and 13` asks for a word, a number
 * of holes and two shared places.
 */

import { fold } from "./words.js";

/** Longer texts are cut here: nobody types more, and a pasted page must not stall the phone. */
export const MOST_CHARACTERS = 200;
const MOST_TERMS = 16;
const LAST_PLACE = 999;
const MOST_WORDS_OF_ANOTHER_NAME = 3;

/** Words that help a sentence along, and may be missing from what is sought. */
const WEAK = new Set(
  (
    "a an the of with and or which what where whose for in on at to by is are has have go goes take takes " +
    "frame frames bore bores mm hole holes part parts place places maker sport pattern racket rackets"
  ).split(" "),
);

/**
 * One thing that must match, in any of several spellings.
 * @typedef {object} Term
 * @property {readonly string[]} ways folded words, each way perhaps several of them in a row
 * @property {boolean} weak
 */

/**
 * @typedef {object} Range
 * @property {number} least
 * @property {number} most
 */

/**
 * @typedef {object} Ask
 * @property {string} text the whole text folded
 * @property {readonly Term[]} terms all must match but the weak; without anything else none is weak
 * @property {Range | null} holes
 * @property {readonly number[]} shared places on the walk, either side
 * @property {boolean} blank nothing was typed
 * @property {boolean} cut the text was too long and only its beginning is used
 */

/**
 * @param {string} typed
 * @param {ReadonlyMap<string, readonly string[]>} [otherNames] folded other name → folded words of the book
 * @returns {Ask}
 */
export function understand(typed, otherNames = new Map()) {
  const text = typed.slice(0, MOST_CHARACTERS);
  const rest = tokens(text);
  const shared = takeShared(rest);
  const holes = takeHoles(rest);
  const plain = rest.map(fold).filter(Boolean).slice(0, MOST_TERMS);
  const terms = withOtherNames(plain, otherNames);
  const weakOnly = !holes && !shared.length && terms.every((term) => term.weak);
  return {
    text: fold(rest.join(" ")),
    terms: weakOnly ? terms.map((term) => ({ ...term, weak: false })) : terms,
    holes,
    shared,
    blank: text.trim() === "",
    cut: typed.length > MOST_CHARACTERS,
  };
}

/**
 * A number of holes or a range of them, from either end: `76`, `70-80`, `70-`, `-80`. Null for anything else.
 * @param {string} text
 * @returns {Range | null}
 */
export function range(text) {
  const found = /^\s*(\d{0,4})\s*(-|–|—|to)?\s*(\d{0,4})\s*$/.exec(text);
  if (!found || !(found[1] || found[3])) return null;
  const [, least = "", dash, most = ""] = found;
  if (!dash) return most ? null : { least: Number(least), most: Number(least) };
  const [from, to] = [Number(least || 0), most ? Number(most) : Infinity];
  return { least: Math.min(from, to), most: Math.max(from, to) };
}

/**
 * Places on the walk, each once and in order, also as the finder says them: `9–11, 27` is 9, 10, 11 and 27.
 * Sides are left out: `R9, 13 and L9` is 9 and 13.
 * @param {string} text
 * @returns {number[]}
 */
export function places(text) {
  const runs = text.slice(0, MOST_CHARACTERS).matchAll(/(\d+)(?:\s*(?:-|–|—|to)\s*[rl]?(\d+))?/gi);
  /** @type {Set<number>} */
  const found = new Set();
  for (const [, first, last = first] of runs) {
    const [from = 0, to = 0] = [Number(first), Number(last)].sort((a, b) => a - b);
    for (let place = Math.max(from, 1); place <= to && place <= LAST_PLACE; place += 1) found.add(place);
  }
  return [...found].sort((a, b) => a - b);
}

/** @param {string} text */
function tokens(text) {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/(\d)[·∙⋅](?=\d)/g, "$1.")
    .replace(/(^|[^\p{L}\p{N}])[ø⌀∅]\s*(?=\d)/gu, "$1")
    .replace(/\b(\d{1,2})\s*mains?\b(?:(?:\s*[,x×]|\s+(?:and|by))?\s+(\d{1,2})\s*cross(?:es)?\b)?/g, "$1x$2")
    .replace(/(\d)\s*(?:[x×*]|\bby\b)\s*(?=\d)/g, "$1x")
    .replace(/(\d)\s*(?:[–—-]|\bto\b)\s*(?=[rl]?\d)/g, "$1-")
    .replace(/(\d)\s*(holes?|mm)\b/g, "$1 $2")
    .replace(/,(?!\d)|;/g, " ")
    .split(/\s+/)
    .filter(Boolean);
}

/**
 * Takes `shared at 9 and 13` out of the words.
 * @param {string[]} words
 */
function takeShared(words) {
  const start = words.findIndex((word) => word === "shared" || word === "shares");
  if (start < 0) return [];
  let end = start + 1;
  /** @type {string[]} */
  const numbers = [];
  for (; end < words.length; end += 1) {
    const word = words[end] ?? "";
    const counts = /^[rl]?\d{1,3}(?:[-,+&][rl]?\d{1,3})*$/.test(word);
    if (counts && /^holes?$/.test(words[end + 1] ?? "")) break;
    if (counts) numbers.push(word);
    else if (!/^(?:holes?|at|in|places?|and|[+&])$/.test(word)) break;
  }
  if (numbers.length) words.splice(start, end - start);
  return places(numbers.join(" "));
}

/**
 * Takes `76 holes`, `70-80 holes`, `holes 76` or `number of holes 76` out of the words.
 * @param {string[]} words
 */
function takeHoles(words) {
  for (const step of [1, -1]) {
    const at = words.findIndex(
      (word, index) => range(word) !== null && /^holes?:?$/.test(words[index + step] ?? ""),
    );
    if (at < 0) continue;
    const found = range(words[at] ?? "");
    const start = Math.min(at, at + step);
    words.splice(start, 2);
    if (words[start - 2] === "number" && words[start - 1] === "of") words.splice(start - 2, 2);
    return found;
  }
  return null;
}

/**
 * @param {readonly string[]} plain
 * @param {ReadonlyMap<string, readonly string[]>} otherNames
 * @returns {Term[]}
 */
function withOtherNames(plain, otherNames) {
  /** @type {Term[]} */
  const terms = [];
  for (let start = 0; start < plain.length;) {
    let length = Math.min(MOST_WORDS_OF_ANOTHER_NAME, plain.length - start);
    while (length > 1 && !otherNames.has(plain.slice(start, start + length).join(" "))) length -= 1;
    const words = plain.slice(start, start + length).join(" ");
    const ways = [words, ...asPattern(words), ...(otherNames.get(words) ?? [])];
    terms.push({ ways, weak: WEAK.has(words) });
    start += length;
  }
  return terms;
}

/**
 * Mains and crosses as people part them: `22/21` and `22-21`, which are folded to one space.
 * @param {string} words of one term, folded
 */
function asPattern(words) {
  return /^\d\d? \d\d?$/.test(words) ? [words.replace(" ", "x")] : [];
}
