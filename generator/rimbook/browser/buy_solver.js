/**
 * The cheapest purchase that meets every need that can be met: exact, or with a bound where the search
 * was cut short. Cheapest means the lowest price; of equal prices the fewest purchases; of those the
 * fewest pieces, so that the least is left over; of those the one met first, which is always the same.
 */

import { Deal } from "./buy_deal.js";
import { model } from "./buy_problem.js";
import { Search } from "./buy_search.js";
import { deal } from "./buy_uses.js";

/** @typedef {import("./buy_problem.js").Problem} Problem */
/** @typedef {import("./buy_problem.js").Need} Need */
/** @typedef {import("./buy_problem.js").Offer} Offer */
/** @typedef {import("./buy_uses.js").Use} Use */
/** @typedef {import("./buy_search.js").Found} Found */

/** As many purchases as are tried before the answer is given without proof: each one that waits takes a kilobyte. */
export const MOST_NODES = 60_000;

/**
 * @typedef {object} Line
 * @property {string} offer
 * @property {number} times
 * @property {string[]} serves the needs that pieces of it go to
 * @property {string[]} forcedBy the needs that cannot be met without this offer
 */

/**
 * @typedef {object} Purchase
 * @property {Line[]} lines
 * @property {number} price in minor units
 * @property {number} purchases
 * @property {number} pieces
 * @property {Use[]} uses what goes where, from the purchase and the shelf
 * @property {Record<string, number>} left what is left of the purchase
 * @property {Record<string, number>} taken what the shelf gives
 */

/**
 * A need, or some pieces of it, that nothing meets.
 * @typedef {object} Unmet
 * @property {string} need
 * @property {number} pieces
 * @property {"nothing serves" | "not to be had" | "too few left"} why
 */

/**
 * @typedef {object} Plan
 * @property {Purchase} cheapest without lines where the shelf is enough
 * @property {Purchase | null} runnerUp the next best that buys something else
 * @property {boolean} proven whether nothing is cheaper
 * @property {boolean} runnerUpProven
 * @property {number} bound in minor units: no purchase has a lower price
 * @property {Unmet[]} unmet
 * @property {number} nodes
 */

export class Solver {
  /**
   * @param {Problem} problem
   * @param {number} [mostNodes]
   */
  constructor(problem, mostNodes = MOST_NODES) {
    this.unmet = unmet(problem);
    const missed = new Map(this.unmet.map(({ need, pieces }) => [need, pieces]));
    const needs = problem.needs.map((need) => ({ ...need, count: need.count - (missed.get(need.id) ?? 0) }));
    this.problem = { ...problem, needs };
    this.model = model(this.problem);
    this.search = new Search(this.model, mostNodes);
    /** How many offers hold each part. @type {Map<string, number>} */
    this.sellers = new Map();
    for (const { holds } of problem.offers) {
      for (const part of Object.keys(holds)) if (holds[part]) this.sellers.set(part, (this.sellers.get(part) ?? 0) + 1);
    }
  }

  /**
   * Goes on for so many nodes.
   * @param {number} nodes
   * @returns {boolean} whether there is more to do
   */
  step(nodes) {
    return this.search.step(nodes);
  }

  /**
   * The answer as far as it is known. Null as long as no purchase is.
   * @returns {Plan | null}
   */
  plan() {
    const { best, second, bound, nodes } = this.search;
    if (!best) return null;
    const { perStep, priceStep } = this.model;
    const least = Math.min(best.weight, bound);
    return {
      cheapest: this.purchase(best),
      runnerUp: second && this.purchase(second),
      proven: bound >= best.weight,
      runnerUpProven: bound >= (second?.weight ?? Infinity),
      bound: Math.floor(least / perStep) * priceStep,
      unmet: this.unmet,
      nodes,
    };
  }

  /**
   * @param {Found} found
   * @returns {Purchase}
   */
  purchase({ times }) {
    const { needs, offers, shelf } = this.problem;
    const chosen = offers.map((offer, at) => ({ offer, times: times[at] })).filter((each) => each.times);
    /** @type {Record<string, number>} */
    const bought = {};
    for (const { offer, times: count } of chosen) {
      for (const [part, pieces] of Object.entries(offer.holds)) bought[part] = (bought[part] ?? 0) + pieces * count;
    }
    const supply = { ...shelf };
    for (const [part, pieces] of Object.entries(bought)) supply[part] = (supply[part] ?? 0) + pieces;
    const { uses } = deal(needs, supply);
    const left = { ...bought };
    /** @type {Record<string, number>} */
    const taken = {};
    for (const { part, count } of uses) {
      const fresh = Math.min(count, left[part] ?? 0);
      if (fresh) left[part] -= fresh;
      if (count > fresh) taken[part] = (taken[part] ?? 0) + count - fresh;
    }
    /** @param {Offer} offer */
    const forcedBy = (offer) => {
      const isOnly = Object.keys(offer.holds).some((part) => offer.holds[part] && this.sellers.get(part) === 1);
      if (!isOnly) return [];
      return unmet({ needs, shelf, offers: offers.filter((other) => other !== offer) }).map(({ need }) => need);
    };
    return {
      lines: chosen.map(({ offer, times: count }) => ({
        offer: offer.id,
        times: count,
        serves: [...new Set(uses.filter(({ part }) => offer.holds[part]).map(({ need }) => need))],
        forcedBy: forcedBy(offer),
      })),
      price: chosen.reduce((total, { offer, times: count }) => total + offer.price * count, 0),
      purchases: chosen.reduce((total, { times: count }) => total + count, 0),
      pieces: Object.values(bought).reduce((total, pieces) => total + pieces, 0),
      uses,
      left: Object.fromEntries(Object.entries(left).filter(([, pieces]) => pieces > 0)),
      taken,
    };
  }
}

/**
 * The whole answer at one go.
 * @param {Problem} problem
 * @param {number} [mostNodes]
 */
export function solve(problem, mostNodes) {
  const solver = new Solver(problem, mostNodes);
  while (solver.step(Infinity));
  return solver.plan();
}

/**
 * What cannot be met even if every offer is bought without end.
 * @param {Problem} problem
 * @returns {Unmet[]}
 */
function unmet({ needs, offers, shelf }) {
  const parts = [...new Set(needs.flatMap((need) => need.parts))];
  const asked = needs.reduce((total, need) => total + need.count, 0);
  const sold = new Set(offers.flatMap(({ holds }) => Object.keys(holds).filter((part) => holds[part])));
  const supply = parts.map((part) => (sold.has(part) ? asked : (shelf[part] ?? 0)));
  const index = new Map(parts.map((part, at) => [part, at]));
  const kindsOf = needs.map((need) => need.parts.map((part) => /** @type {number} */ (index.get(part))));
  const lacking = new Deal(
    needs.map((need) => need.count),
    kindsOf,
    parts.length,
  ).out(supply);
  return lacking.map(({ group, pieces }) => {
    const { id, parts: own } = needs[group];
    const why = !own.length ? "nothing serves" : own.some((part) => shelf[part]) ? "too few left" : "not to be had";
    return { need: id, pieces, why };
  });
}
