/** Where things stand when a draft is written down: what decides which problem is told first. */

import { entries, isMapping, valueAt, wordsOf } from "./draft_written.js";

/** @typedef {import("./draft_shape.js").Shape} Shape */
/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */

/** No text has as many words. */
const WORDS = 10_000;

/**
 * A number for each place of a draft that grows from top to bottom: keys in the order of their shape, others
 * after them. What is not there stands where that stands which would hold it.
 * @param {Draft} draft
 * @param {Shape} shape
 * @returns {(path: Path, isKey?: boolean) => number} of a value, of a key, or of a word of a text by its index
 */
export function marks(draft, shape) {
  /** @type {Map<string, number>[]} */
  const [values, keys] = [new Map(), new Map()];
  let next = 0;
  /** @type {(value: any, asked: Shape | undefined, path: Path) => void} */
  const visit = (value, asked, path) => {
    values.set(JSON.stringify(path), next++);
    if (Array.isArray(value)) value.forEach((each, index) => visit(each, asked?.each, [...path, index]));
    else if (isMapping(value)) {
      for (const [key, each] of inOrder(value, asked)) {
        keys.set(JSON.stringify([...path, key]), next++);
        visit(each, asked?.keys?.[key] ?? asked?.each, [...path, key]);
      }
    }
  };
  visit(draft, shape, []);
  return (path, isKey = false) => {
    const key = keys.get(JSON.stringify(path));
    if (isKey && key !== undefined) return key;
    for (let end = path.length; end > 0; end--) {
      const found = values.get(JSON.stringify(path.slice(0, end)));
      if (found !== undefined) return found + (end === path.length - 1 ? word(draft, path) : 0);
    }
    return 0;
  };
}

/**
 * @param {any} mapping
 * @param {Shape | undefined} shape
 * @returns {[string, any][]}
 */
function inOrder(mapping, shape) {
  const order = Object.keys(shape?.keys ?? {});
  const rank = (/** @type {string} */ key) => (order.includes(key) ? order.indexOf(key) : order.length);
  return entries(mapping).sort(([one], [other]) => rank(one) - rank(other));
}

/**
 * @param {Draft} draft
 * @param {Path} path
 * @returns {number} how far into a text a word of it stands, 0 … 1
 */
function word(draft, path) {
  const [text, index] = [valueAt(draft, path.slice(0, -1)), path[path.length - 1]];
  if (typeof text !== "string" || typeof index !== "number") return 0;
  return index < wordsOf(text).length ? (index + 1) / WORDS : 0;
}
