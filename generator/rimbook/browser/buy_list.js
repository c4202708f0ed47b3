/** What a shop can buy and what lies on its shelf, as the search for the cheapest purchase wants it. */

/** @typedef {import("./buy_problem.js").Offer} Offer */

/**
 * @typedef {object} Sold
 * @property {string} part id of a part or a set
 * @property {number} count
 * @property {number} price of all of them, in minor units
 * @property {string} seller
 */

/**
 * @typedef {object} Shelved
 * @property {string} part
 * @property {number} count
 * @property {number | null} price that a customer pays for one piece, in minor units
 */

/**
 * @typedef {object} PriceList
 * @property {string} currency as in ISO 4217
 * @property {Sold[]} sold
 * @property {Shelved[]} shelf
 */

/**
 * @param {PriceList} list
 * @param {Readonly<Record<string, Readonly<Record<string, number>>>>} sets what each set holds
 * @returns {Offer[]} the id is the place in the list
 */
export function offersOf({ sold }, sets) {
  return sold.map(({ part, count, price }, at) => {
    const holds = sets[part] ?? { [part]: 1 };
    const pieces = Object.entries(holds).map(([each, of]) => [each, of * count]);
    return { id: String(at), price, holds: Object.fromEntries(pieces) };
  });
}

/**
 * @param {PriceList} list
 * @returns {Record<string, number>} pieces by part id
 */
export function shelfOf({ shelf }) {
  return Object.fromEntries(shelf.map(({ part, count }) => [part, count]));
}
