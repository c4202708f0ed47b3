/** Lengths as people type and read them. */

/**
 * A length as it was typed: `2.1`, `2,1`, `2,1 mm`, `.5`. No thousands are meant: no hole has any.
 * @param {string} typed
 * @returns {number} NaN for anything else; the sign is kept, so that one can say what is wrong
 */
export function readMm(typed) {
  const text = typed
    .normalize("NFKC")
    .replace(/[−–]/g, "-")
    .replace(/\s*mm\s*$/i, "")
    .trim();
  return /^[-+]?(\d+[.,]?\d*|[.,]\d+)$/.test(text) ? Number(text.replace(",", ".")) : NaN;
}

/**
 * A number with at most two digits behind the point and no needless zeros: 2.10 is `2.1`. Halves go to the
 * even digit, as where the build writes numbers.
 * @param {number} value
 */
export function number(value) {
  const isHalf = Number.isInteger(value * 8) && !Number.isInteger(value * 4);
  const text = (isHalf ? Math.round(value * 50) / 50 : value).toFixed(2);
  return text.replace(/\.?0+$/, "");
}

/**
 * The same with a proper minus sign, and none before a zero.
 * @param {number} value
 */
export function signed(value) {
  return number(value).replace(/^-0$/, "0").replace("-", "−");
}

/**
 * A size as pages write it: 2 is `2.0`, 2.75 stays.
 * @param {number} value
 */
export function size(value) {
  const text = number(value);
  return text.includes(".") ? text : `${text}.0`;
}
