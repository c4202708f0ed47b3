/**
 * Money as a whole number of the currency's minor unit: cents, not euros. No sum passes through a fraction.
 *
 * Where a share must be rounded, half a unit goes away from zero, as on a shop's receipt
 * (roundTiesToAway in IEEE 754-2019, 4.3.1), or to the even neighbour (roundTiesToEven) if asked.
 */

import { digitsOf } from "./currencies.js";

/** @typedef {"away" | "even"} Half where half a unit goes */

/** No price at a bench is higher, in minor units. */
export const MOST_AMOUNT = 1_000_000_000;

const PLAIN = /^(\d+)(?:[.,](\d*))?$/;
const GROUPED = /^(\d{1,3}(?:([ '’.,])\d{3})(?:\2\d{3})*)(?:(?!\2)[.,](\d*))?$/;
const UNCLEAR = /^(\d{1,3})([.,])(\d{3})$/;

/**
 * What someone typed as an amount: `12.50`, `12,50`, `1 250`, `1,250.00`, with or without the currency. One
 * point or comma before three digits is refused, for nobody can tell whether thousands are meant; only
 * where the currency has three digits a point is one.
 * @param {string} typed
 * @param {string} currency as in ISO 4217
 * @returns {{amount: number} | {problem: string}}
 */
export function readAmount(typed, currency) {
  const digits = digitsOf(currency);
  if (digits === null) return { problem: `“${currency}” is no currency: expected three letters such as EUR.` };
  const example = written(123456, currency);
  const text = typed.normalize("NFKC").replace(new RegExp(`${currency}|\\p{Sc}`, "giu"), "").trim();
  if (/^[-−–]/.test(text)) return { problem: `“${typed}” is below zero: expected one such as ${example}.` };
  const unclear = UNCLEAR.exec(text);
  const hasThree = digits === 3 && unclear?.[2] === ".";
  if (unclear && !hasThree) {
    const either = [text.replace(/[.,]/, ""), written(Number(unclear[1]) * 10 ** digits, currency)];
    return { problem: `“${typed}” can be read in two ways: write ${[...new Set(either)].join(" or ")}.` };
  }
  const grouped = hasThree ? null : GROUPED.exec(text);
  const [, whole = "", behind = ""] = grouped ? ["", grouped[1], grouped[3]] : (PLAIN.exec(text) ?? []);
  if (!whole) return { problem: `“${typed}” is no amount: expected one such as ${example}.` };
  if (behind.replace(/0+$/, "").length > digits) {
    return { problem: `“${typed}” has too many digits behind the point: ${currency} has ${digits || "none"}.` };
  }
  const amount = Number(whole.replace(/\D/g, "") + behind.slice(0, digits).padEnd(digits, "0"));
  if (amount > MOST_AMOUNT) {
    return { problem: `“${typed}” is more than any price here: at most ${written(MOST_AMOUNT, currency)}.` };
  }
  return { amount };
}

/**
 * An amount in plain digits with a point, as in a file: `12.50`.
 * @param {number} amount
 * @param {string} currency
 */
export function written(amount, currency) {
  const digits = digitsOf(currency) ?? 0;
  const text = String(Math.abs(amount)).padStart(digits + 1, "0");
  const at = text.length - digits;
  return `${amount < 0 ? "-" : ""}${text.slice(0, at)}${digits ? `.${text.slice(at)}` : ""}`;
}

/**
 * An amount as people of a place write it. The digits are those of ISO 4217, whatever the place is used to.
 * @param {number} amount
 * @param {string} currency
 * @param {string} [locale] the reader's own if left out
 */
export function shown(amount, currency, locale) {
  const digits = digitsOf(currency) ?? 0;
  const plain = written(amount, currency);
  try {
    const style = { style: "currency", currency, minimumFractionDigits: digits, maximumFractionDigits: digits };
    const format = new Intl.NumberFormat(locale, /** @type {Intl.NumberFormatOptions} */ (style));
    return format.format(/** @type {any} */ (plain));
  } catch {
    return `${currency} ${plain}`;
  }
}

/**
 * `amount` × `numerator` / `denominator`, rounded once.
 * @param {number} amount
 * @param {number} numerator a whole number, as are the others
 * @param {number} denominator above zero
 * @param {Half} [half]
 */
export function share(amount, numerator, denominator, half = "away") {
  const product = BigInt(amount) * BigInt(numerator);
  const divisor = BigInt(denominator);
  const size = product < 0n ? -product : product;
  const whole = size / divisor;
  const twice = (size % divisor) * 2n;
  const up = twice > divisor || (twice === divisor && (half === "away" || whole % 2n === 1n));
  const rounded = Number(whole + (up ? 1n : 0n));
  return product < 0n ? 0 - rounded : rounded;
}

/**
 * Shares of an amount by weight that add up to exactly that amount: each is the rounded sum so far,
 * less the one before.
 * @param {number} amount
 * @param {readonly number[]} weights whole numbers, not all zero
 * @param {Half} [half]
 * @returns {number[]}
 */
export function split(amount, weights, half = "away") {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let weight = 0;
  let before = 0;
  return weights.map((each) => {
    weight += each;
    const upTo = share(amount, weight, total, half);
    const own = upTo - before;
    before = upTo;
    return own;
  });
}
