/** A tension as a reader writes it, in pounds, kilograms or newtons: the weight of a mass in standard gravity. */

/**
 * Newtons in one of each unit (NIST Special Publication 811, appendix B.8).
 * @type {Readonly<Record<string, number>>}
 */
export const UNITS = { lb: 0.45359237 * 9.80665, kg: 9.80665, N: 1 };

/** More than any string of a racket bears. */
export const MOST_NEWTONS = 1000;

/** @typedef {{ value: number, unit: string }} Limit what the maker prints on the frame */

/**
 * @param {string} text `24`, `24.5` or `24,5`
 * @param {string} unit one of `UNITS`
 * @returns {{ newtons: number | null, says: string }} why it is none, where it is none
 */
export function readTension(text, unit) {
  const most = written(MOST_NEWTONS, unit);
  const expected = `Write a number over 0 and up to ${most} ${unit}. The forces below are still those of the last one.`;
  const tidy = text.trim().replace(",", ".");
  if (!/^\d{1,6}(\.\d{1,6})?$|^\.\d{1,6}$/.test(tidy)) return { newtons: null, says: expected };
  const newtons = Number(tidy) * factor(unit);
  return newtons > 0 && newtons <= MOST_NEWTONS * (1 + 1e-9)
    ? { newtons, says: "" }
    : { newtons: null, says: expected };
}

/**
 * What must be said of a tension: that it is above the limit, and by how much. Empty within it.
 * @param {number} newtons
 * @param {Limit | null} limit
 */
export function tensionWords(newtons, limit) {
  if (!limit) return "";
  const most = limit.value * factor(limit.unit);
  if (newtons <= most * (1 + 1e-9)) return "";
  const over = (100 * (newtons / most - 1)).toFixed(1);
  return (
    `This tension is ${over} % above the ${limit.value} ${limit.unit} printed on the frame. ` +
    "The maker's limit comes first: the frame may break."
  );
}

/**
 * A tension in a unit, to a tenth.
 * @param {number} newtons
 * @param {string} unit
 */
export function written(newtons, unit) {
  return (newtons / factor(unit)).toFixed(1).replace(/\.0$/, "");
}

/** @param {string} unit */
function factor(unit) {
  return UNITS[unit] ?? 1;
}
