/**
 * The cheapest purchase and the next best, by branch and bound, a piece of work at a time.
 *
 * Where pieces lack, one piece more must come from an offer that brings what the lacking groups take. So
 * each of those is tried in turn, and what was tried before is barred from then on: no purchase is met
 * twice. A branch ends where even its bound is no better than what is known.
 */

import { Bound } from "./buy_bound.js";
import { Deal } from "./buy_deal.js";

/** @typedef {import("./buy_problem.js").Model} Model */

/**
 * @typedef {object} Found
 * @property {number} weight
 * @property {number[]} times how often each offer is bought
 */

/**
 * A purchase that is not yet enough, on the way to the present one.
 * @typedef {object} Level
 * @property {number} spent its weight
 * @property {Int32Array} have pieces by kind
 * @property {Uint8Array} open whether an offer may still be bought
 * @property {Float64Array} worth of a place, by group, as the bound found it
 * @property {number} bound what it comes to at least, once it is enough
 * @property {number[]} tries offers to go on with, the most promising first
 * @property {number[]} rises by how much each of them raises the bound
 * @property {number} next which of them comes next
 */

const ROOT_ROUNDS = 60;
const ROUNDS = 8;

export class Search {
  /**
   * @param {Model} model of needs that can be met
   * @param {number} mostNodes after half of them only the cheapest is still sought
   */
  constructor(model, mostNodes) {
    this.model = model;
    this.mostNodes = mostNodes;
    this.nodes = 0;
    /** @type {Found | null} */
    this.best = null;
    /** @type {Found | null} */
    this.second = null;
    this.bounds = new Bound(model);
    this.deal = new Deal(model.asks, model.kindsOf, model.caps.length);
    this.rises = new Float64Array(model.weights.length);
    /** How often each offer is bought at present. */
    this.times = model.brings.map(() => 0);
    /** @type {number[]} */
    this.bought = [];
    /** @type {Level[]} */
    this.levels = [];
    /** @type {number[][]} */
    this.sellers = model.caps.map(() => []);
    model.brings.forEach((own, offer) => own.forEach(({ kind }) => this.sellers[kind].push(offer)));

    const open = Uint8Array.from(model.brings, (own) => (own.length ? 1 : 0));
    const worth = firstWorth(model);
    this.bounds.price(open);
    this.bounds.climb(worth, open, model.shelf, Infinity, ROOT_ROUNDS);
    this.visit(0, Int32Array.from(model.shelf), open, worth);
  }

  /** Whether all has been tried. */
  get done() {
    return this.levels.length === 0;
  }

  /** No purchase that was not met weighs less. */
  get bound() {
    const rest = this.levels.filter(({ next, tries }) => next < tries.length).map(({ bound }) => bound);
    return Math.min(Infinity, ...rest);
  }

  /**
   * Tries so many more purchases.
   * @param {number} nodes
   * @returns {boolean} whether there is more to do
   */
  step(nodes) {
    const end = Math.min(this.nodes + nodes, this.mostNodes);
    while (this.levels.length && this.nodes < end) {
      const level = this.levels[this.levels.length - 1];
      const { next, tries, rises } = level;
      if (next === tries.length || level.bound + rises[next] >= this.limit) {
        this.levels.pop();
        this.giveBack();
        continue;
      }
      level.next++;
      this.nodes++;
      if (!this.buy(tries[next], level)) this.giveBack();
    }
    return this.levels.length > 0 && this.nodes < this.mostNodes;
  }

  /** What a purchase must weigh less than. */
  get limit() {
    const known = this.nodes * 2 < this.mostNodes ? this.second : this.best;
    return known ? known.weight : Infinity;
  }

  /**
   * @param {number} offer
   * @param {Level} level
   */
  buy(offer, level) {
    const { brings, caps, weights } = this.model;
    const have = level.have.slice();
    for (const { kind, count } of brings[offer]) have[kind] = Math.min(caps[kind], have[kind] + count);
    const open = level.open.slice();
    level.open[offer] = 0;
    this.times[offer]++;
    this.bought.push(offer);
    return this.visit(level.spent + weights[offer], have, open, level.worth.slice());
  }

  giveBack() {
    const offer = this.bought.pop();
    if (offer !== undefined) this.times[offer]--;
  }

  /**
   * @param {number} spent
   * @param {Int32Array} have
   * @param {Uint8Array} open
   * @param {Float64Array} worth
   * @returns {boolean} whether there is anything to go on with
   */
  visit(spent, have, open, worth) {
    const lacking = this.deal.out(have);
    if (!lacking.length) {
      this.note(this.times.slice());
      return false;
    }
    const { bounds, rises } = this;
    bounds.price(open);
    const bound = spent + bounds.climb(worth, open, have, this.limit - spent, ROUNDS);
    if (bound >= this.limit) return false;
    for (let offer = 0; offer < open.length; offer++) {
      if (!open[offer]) continue;
      rises[offer] = bounds.rise(offer, have);
      if (bound + rises[offer] >= this.limit) open[offer] = 0;
    }
    const tries = this.fewestTries(lacking, open).sort((a, b) => rises[a] - rises[b]);
    if (!tries.length) return false;
    this.levels.push({ spent, have, open, worth, bound, tries, rises: tries.map((offer) => rises[offer]), next: 0 });
    return true;
  }

  /**
   * @param {{rivals: number[]}[]} lacking
   * @param {Uint8Array} open
   */
  fewestTries(lacking, open) {
    /** @type {number[] | null} */
    let fewest = null;
    for (const { rivals } of lacking) {
      const seen = new Uint8Array(open.length);
      const own = [];
      for (const group of rivals) {
        for (const kind of this.model.kindsOf[group]) {
          for (const offer of this.sellers[kind]) {
            if (open[offer] && !seen[offer]) own.push(offer);
            seen[offer] = 1;
          }
        }
      }
      if (!fewest || own.length < fewest.length) fewest = own;
    }
    return fewest ?? [];
  }

  /**
   * Keeps a purchase that is enough, without what it can do without.
   * @param {number[]} times
   */
  note(times) {
    const { weights } = this.model;
    const dearestFirst = [...times.keys()].filter((offer) => times[offer]).sort((a, b) => weights[b] - weights[a]);
    for (const offer of dearestFirst) {
      while (times[offer]) {
        times[offer]--;
        if (this.isEnough(times)) continue;
        times[offer]++;
        break;
      }
    }
    const weight = times.reduce((total, count, offer) => total + count * weights[offer], 0);
    const found = { weight, times };
    const isSame = (/** @type {Found | null} */ other) => other?.times.every((count, offer) => count === times[offer]);
    if (isSame(this.best) || isSame(this.second)) return;
    if (!this.best || weight < this.best.weight) [this.best, this.second] = [found, this.best];
    else if (!this.second || weight < this.second.weight) this.second = found;
  }

  /** @param {readonly number[]} times */
  isEnough(times) {
    const have = [...this.model.shelf];
    times.forEach((count, offer) => {
      if (count) for (const { kind, count: each } of this.model.brings[offer]) have[kind] += count * each;
    });
    return this.deal.out(have).length === 0;
  }
}

/**
 * Worths so low that no offer brings more than it costs.
 * @param {Model} model
 */
function firstWorth({ asks, brings, groupsOf, weights }) {
  const worth = new Float64Array(asks.length).fill(Infinity);
  brings.forEach((own, offer) => {
    const each = Math.floor(weights[offer] / own.reduce((total, { count }) => total + count, 0));
    for (const { kind } of own) for (const group of groupsOf[kind]) worth[group] = Math.min(worth[group], each);
  });
  return worth.map((each) => (each === Infinity ? 0 : each));
}
