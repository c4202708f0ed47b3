/** What a price list says of a shelf: the cheapest price of every pack, who has it, and what an order costs. */

import { packsFor } from "./shelf_packs.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./buy_list.js").PriceList} PriceList */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */
/** @typedef {import("./shelf_plan.js").ShelfPlan} ShelfPlan */

/** A pack by its size. Amounts are in the currency's smallest unit. @typedef {{price: number, seller: string}} Pack */

export class Prices {
  /** @param {PriceList} list */
  constructor({ currency, sold }) {
    this.currency = currency;
    /** @type {Map<string, Map<number, Pack>>} */
    this.packs = new Map();
    for (const { part, count, price, seller } of sold) {
      const own = this.packs.get(part) ?? new Map();
      const known = own.get(count);
      if (!known || price < known.price) own.set(count, { price, seller });
      this.packs.set(part, own);
    }
  }

  /** Whether no price at all is known. */
  get isEmpty() {
    return this.packs.size === 0;
  }

  /**
   * @param {string} item
   * @returns {Record<number, number> | null} the cheapest price by the size of the pack
   */
  of(item) {
    const own = this.packs.get(item);
    return own ? Object.fromEntries([...own].map(([size, { price }]) => [size, price])) : null;
  }

  /**
   * @param {string} item
   * @returns {number | null} the least that one unit costs
   */
  unit(item) {
    const own = this.packs.get(item);
    return own ? Math.min(...[...own].map(([size, { price }]) => price / size)) : null;
  }
}

/**
 * The packs that an order is made of, and what they cost. With prices: the cheapest. Without: those of the catalogue.
 * @param {Drawer} drawer
 * @param {readonly number[]} catalogue sizes of the packs in the catalogue
 * @param {Prices} prices
 * @returns {{words: string, cost: number | null}}
 */
export function purchase({ item, order }, catalogue, prices) {
  if (!order) return { words: "", cost: null };
  const own = prices.packs.get(item);
  const found = packsFor(order.units, own ? [...own.keys()] : catalogue, own ? prices.of(item) : null);
  const words = found.map(([size, count]) => {
    const seller = own?.get(size)?.seller;
    return `${counted(count, "pack")} of ${size}${seller ? ` from ${seller}` : ""}`;
  });
  const cost = own ? found.reduce((sum, [size, count]) => sum + count * (own.get(size)?.price ?? 0), 0) : null;
  return { words: listed(words), cost };
}

/**
 * What all that is to be ordered costs, and for how many lines no price is known.
 * @param {ShelfPlan} plan
 * @param {Prices} prices
 * @returns {{paid: number, priced: number, unpriced: number}}
 */
export function bill({ drawers, items }, prices) {
  const costs = drawers
    .filter(({ order }) => order)
    .map((drawer) => purchase(drawer, items[drawer.item]?.packs ?? [], prices).cost);
  const known = costs.filter((cost) => cost !== null);
  return {
    paid: known.reduce((sum, cost) => sum + Number(cost), 0),
    priced: known.length,
    unpriced: costs.length - known.length,
  };
}
