/**
 * A draft: a map as it is written, as plain values.
 *
 * Lines of `fitted`, `bore_mm` and `rim_depth_mm` rule one another by their order. A plain object would put
 * the line `20` before all others, so they may be given as a list of pairs or as a Map as well.
 */

/** @typedef {readonly (string | number)[]} Path */
/** @typedef {Record<string, any>} Draft */

const ORDERED = ["fitted", "bore_mm", "rim_depth_mm"];

/**
 * The draft with a Map wherever the order of lines counts.
 * @param {Draft} draft
 * @returns {Draft}
 */
export function written(draft) {
  const whole = { ...draft };
  for (const name of ORDERED) if (name in whole) whole[name] = lines(whole[name]);
  if (Array.isArray(whole.fitted) && !whole.fitted.length) whole.fitted = new Map();
  return whole;
}

/**
 * @param {unknown} value
 * @returns {unknown} a Map where it holds lines, otherwise the value itself
 */
function lines(value) {
  if (Array.isArray(value)) {
    const isPair = (/** @type {unknown} */ each) => Array.isArray(each) && each.length === 2 && typeof each[0] === "string";
    return value.length && value.every(isPair) ? new Map(value) : value;
  }
  return isMapping(value) ? new Map(entries(value)) : value;
}

/**
 * @param {unknown} value
 * @returns {boolean}
 */
export function isMapping(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/**
 * Keys and values in order.
 * @param {any} mapping
 * @returns {[string, any][]}
 */
export function entries(mapping) {
  return mapping instanceof Map ? [...mapping] : Object.entries(mapping);
}

/**
 * @param {any} value
 * @param {string | number} step
 * @returns {boolean} whether there is anything at a key of a mapping or an index of a list
 */
export function holds(value, step) {
  if (value instanceof Map) return value.has(step);
  if (Array.isArray(value)) return typeof step === "number" && step < value.length;
  return isMapping(value) && Object.hasOwn(value, step);
}

/**
 * @param {any} draft
 * @param {Path} path
 * @returns {any} undefined where there is nothing
 */
export function valueAt(draft, path) {
  let value = draft;
  for (const step of path) {
    if (!holds(value, step)) return undefined;
    value = value instanceof Map ? value.get(step) : value[step];
  }
  return value;
}

/**
 * The words of a walk or of any other text.
 * @param {string} text
 */
export function wordsOf(text) {
  return text.split(/\s+/).filter(Boolean);
}
