/**
 * What a repair needs and what can be bought, as plain values; and the same as numbers for the search.
 *
 * A need is a number of alike places, each of which takes one piece of any part that serves it. An
 * offer is bought whole, any number of times: a pack, a strip, a set with different parts in it. What
 * lies on the shelf costs nothing and runs out.
 */

/**
 * @typedef {object} Need
 * @property {string} id
 * @property {number} count pieces
 * @property {readonly string[]} parts ids of the parts that serve, the best first
 */

/**
 * @typedef {object} Offer
 * @property {string} id
 * @property {number} price in minor units of the currency
 * @property {Readonly<Record<string, number>>} holds pieces by part id
 */

/**
 * @typedef {object} Problem
 * @property {readonly Need[]} needs in the order in which they are met if not all can be
 * @property {readonly Offer[]} offers
 * @property {Readonly<Record<string, number>>} shelf pieces by part id
 */

/**
 * Needs with the same parts are one group; parts that serve the same groups are one kind.
 * @typedef {object} Model
 * @property {number[]} asks pieces, by group
 * @property {number[][]} kindsOf kinds that serve, by group
 * @property {number[][]} groupsOf groups served, by kind
 * @property {number[]} caps pieces of which there can be use, by kind
 * @property {number[]} shelf pieces, by kind
 * @property {{kind: number, count: number}[][]} brings by offer, as far as there can be use for it
 * @property {Float64Array} weights of the offers: price, purchases and pieces in one whole number
 * @property {number} priceStep the greatest amount of which every price is a multiple
 * @property {number} perStep what that amount weighs
 */

/** Sums of a few of these are still exact. */
const MOST_WEIGHT = 2 ** 49;
const FINEST = 256;

/**
 * @param {Problem} problem
 * @returns {Model}
 */
export function model({ needs, offers, shelf }) {
  const wanted = needs.filter((need) => need.count > 0);
  const groups = collect(wanted, (need) => [...new Set(need.parts)].sort().join("\n"));
  const parts = [...new Set(wanted.flatMap((need) => need.parts))];
  const serves = (/** @type {string} */ part) =>
    [...groups.keys()].filter((at) => groups[at][0].parts.includes(part));
  const kinds = collect(parts, (part) => serves(part).join());
  const asks = groups.map((group) => sum(group.map((need) => need.count)));
  const groupsOf = kinds.map(([part]) => serves(part));
  const caps = groupsOf.map((own) => sum(own.map((at) => asks[at])));
  const pieces = (/** @type {Readonly<Record<string, number>>} */ from) =>
    kinds.map((kind, at) => Math.min(caps[at], sum(kind.map((part) => from[part] ?? 0))));
  return {
    asks,
    kindsOf: [...groups.keys()].map((group) => [...kinds.keys()].filter((kind) => groupsOf[kind].includes(group))),
    groupsOf,
    caps,
    shelf: pieces(shelf),
    brings: offers.map((offer) => {
      const all = pieces(offer.holds).map((count, kind) => ({ kind, count }));
      return all.filter(({ count }) => count > 0);
    }),
    ...weigh(offers, sum(asks)),
  };
}

/**
 * Price first, then the number of purchases, then the pieces bought: one whole number that orders
 * purchases that way. Where the prices leave no room for all three, the last ones go.
 * @param {readonly Offer[]} offers
 * @param {number} asked pieces that all needs ask together: no purchase without waste has more offers
 */
function weigh(offers, asked) {
  const priceStep = offers.reduce((divisor, offer) => commonDivisor(divisor, offer.price), 0) || 1;
  const pieces = offers.map((offer) => sum(Object.values(offer.holds)));
  const most = Math.max(1, ...offers.map((offer) => offer.price / priceStep)) * (asked + 1);
  let perPiece = FINEST;
  let perPurchase = perPiece * (asked * Math.max(0, ...pieces) + 1);
  let perStep = perPurchase * (asked + 1);
  if (most * perStep > MOST_WEIGHT) [perPiece, perPurchase, perStep] = [0, 1, asked + 1];
  if (most * perStep > MOST_WEIGHT) [perPurchase, perStep] = [0, 1];
  const weights = offers.map((offer, at) => (offer.price / priceStep) * perStep + perPurchase + pieces[at] * perPiece);
  return { weights: Float64Array.from(weights), priceStep, perStep };
}

/**
 * @template Item
 * @param {readonly Item[]} items
 * @param {(item: Item) => string} key
 * @returns {Item[][]} those with the same key together
 */
function collect(items, key) {
  /** @type {Map<string, Item[]>} */
  const found = new Map();
  for (const item of items) {
    const own = found.get(key(item));
    if (own) own.push(item);
    else found.set(key(item), [item]);
  }
  return [...found.values()];
}

/** @param {readonly number[]} numbers */
function sum(numbers) {
  return numbers.reduce((total, each) => total + each, 0);
}

/**
 * @param {number} a
 * @param {number} b
 * @returns {number}
 */
function commonDivisor(a, b) {
  return b === 0 ? a : commonDivisor(b, a % b);
}
