/**
 * What a shop entered on the page of prices: kept on this device and nowhere else. No map holds a price, and
 * no address of a page does.
 */

import { digitsOf } from "./currencies.js";
import { onChangeElsewhere, recall, remember } from "./device.js";
import { MOST_AMOUNT } from "./money.js";
import { NO_TERMS } from "./sheet_quote.js";
import { USUAL_LABOUR } from "./sheet_time.js";

/** @typedef {import("./buy_list.js").PriceList} PriceList */
/** @typedef {import("./sheet_quote.js").Terms} Terms */
/** @typedef {import("./sheet_time.js").Labour} Labour */

/**
 * @typedef {object} Shop
 * @property {PriceList} list
 * @property {Terms} terms
 * @property {Labour} labour
 * @property {boolean} isExample whether the list is the invented one
 */

const NAME = "shop";
const FORMAT = 1;
export const MOST_COUNT = 10_000;
export const MOST_SECONDS = 3600;
export const MOST_MARKUP = 500;
export const MOST_STEP = 10_000;

/** @type {Shop} */
export const NO_SHOP = {
  list: { currency: "EUR", sold: [], shelf: [] },
  terms: NO_TERMS,
  labour: USUAL_LABOUR,
  isExample: false,
};

/**
 * Whatever of it can be relied on: rows and figures that make no sense are left out.
 * @returns {Shop}
 */
export function openShop() {
  const kept = /** @type {any} */ (recall(NAME));
  if (kept?.format !== FORMAT || digitsOf(kept.list?.currency) === null) return NO_SHOP;
  const { currency, sold, shelf } = kept.list;
  const isPart = (/** @type {any} */ row) => typeof row?.part === "string" && isWhole(row.count, MOST_COUNT);
  return {
    list: {
      currency,
      sold: listOf(sold).filter((row) => isPart(row) && row.count > 0 && isWhole(row.price, MOST_AMOUNT)),
      shelf: listOf(shelf).filter((row) => isPart(row) && (row.price === null || isWhole(row.price, MOST_AMOUNT))),
    },
    terms: {
      hourly: isWhole(kept.terms?.hourly, MOST_AMOUNT) ? kept.terms.hourly : 0,
      least: isWhole(kept.terms?.least, MOST_AMOUNT) ? kept.terms.least : 0,
      markup: kept.terms?.markup >= 0 && kept.terms.markup <= MOST_MARKUP ? Number(kept.terms.markup) : 0,
      half: kept.terms?.half === "even" ? "even" : "away",
      step: kept.terms?.step > 0 && isWhole(kept.terms.step, MOST_STEP) ? kept.terms.step : 1,
    },
    labour: /** @type {Labour} */ (
      Object.fromEntries(
        Object.entries(USUAL_LABOUR).map(([what, usual]) => {
          const own = kept.labour?.[what];
          return [what, isWhole(own, MOST_SECONDS) ? own : usual];
        }),
      )
    ),
    isExample: kept.isExample === true,
  };
}

/**
 * @param {Shop} shop
 * @returns {boolean} whether it will still be there next time
 */
export function keepShop(shop) {
  return remember(NAME, { format: FORMAT, ...shop });
}

/** @param {() => void} callback another tab has changed it */
export function onShopElsewhere(callback) {
  onChangeElsewhere(NAME, callback);
}

/**
 * @param {unknown} value
 * @returns {any[]}
 */
function listOf(value) {
  return Array.isArray(value) ? value : [];
}

/**
 * @param {unknown} value
 * @param {number} most
 */
function isWhole(value, most) {
  return Number.isInteger(value) && Number(value) >= 0 && Number(value) <= most;
}
