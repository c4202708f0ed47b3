/** Numbers read and written as where the site is built: halves go to the even digit. */

/**
 * With so many digits behind the point.
 * @param {number} value
 * @param {number} digits
 * @returns {string}
 */
export function fixed(value, digits) {
  if (Object.is(value, -0)) return `-${fixed(0, digits)}`;
  // Only such a multiple lies exactly between two; `toFixed` rounds it away from zero.
  const doubled = Math.abs(value) * 2 ** (digits + 1);
  if (!Number.isInteger(doubled) || doubled % 2 === 0) return value.toFixed(digits);
  const below = (doubled * 5 ** digits - 1) / 2;
  const even = ((below + (below % 2)) / 10 ** digits).toFixed(digits);
  return value < 0 ? `-${even}` : even;
}

/**
 * @param {number} value
 * @param {number} digits behind the point
 */
export function rounded(value, digits) {
  return Number(fixed(value, digits));
}

/**
 * With six digits in all and no needless zeros: `2.7`, `680.1`, `1e-05`.
 * @param {number} value
 * @returns {string}
 */
export function general(value) {
  const [digits, exponent] = value.toExponential(5).split("e");
  const power = Number(exponent);
  if (value && (power < -4 || power > 5)) {
    return `${shortest(digits)}e${power < 0 ? "-" : "+"}${String(Math.abs(power)).padStart(2, "0")}`;
  }
  return shortest(fixed(value, 5 - power));
}

/**
 * A length as people write it: `2.7 mm`.
 * @param {number} value
 */
export function mm(value) {
  return `${general(rounded(value, 3))} mm`;
}

/**
 * @param {string} text such as ` 2.70 ` or `1e1`
 * @returns {number} NaN where it is no finite number
 */
export function readNumber(text) {
  const plain = text.trim();
  return /^[-+]?(\d+(_\d+)*\.?(\d+(_\d+)*)?|\.\d+(_\d+)*)(e[-+]?\d+(_\d+)*)?$/i.test(plain)
    ? Number(plain.replaceAll("_", ""))
    : NaN;
}

/** @param {string} text with a point in it, or without */
function shortest(text) {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/**
 * @param {number} count
 * @returns {string} with a comma at each thousand
 */
export function grouped(count) {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
