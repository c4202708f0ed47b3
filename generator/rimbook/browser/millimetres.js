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
 * A number with at most two digits behind the point and no needless zeros: 2.10 is `2.1`.
 * @param {number} value
 */
export function number(value) {
  return decimals(value, 2);
}

/**
 * The same with as many digits as are wanted, at most 6. Halves go to the even digit, as where the build
 * writes numbers.
 * @param {number} value
 * @param {number} digits
 */
export function decimals(value, digits) {
  const isHalf = Number.isInteger(value * 2 ** (digits + 1)) && !Number.isInteger(value * 2 ** digits);
  const below = Math.floor(value * 10 ** digits);
  const text = (isHalf ? (below % 2 === 0 ? below : below + 1) / 10 ** digits : value).toFixed(digits);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
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
