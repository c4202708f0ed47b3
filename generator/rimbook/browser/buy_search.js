/**
 * The cheapest purchase and the next best, by branch and bound, a piece of work at a time.
 *
 * Where pieces lack, one piece more must come from an offer that brings what the lacking groups take. So
 * each of those is tried in turn, and what was tried before is barred from then on: no purchase is met
 * twice. Where packs of one kind abound, dear offers and sets are settled first: bought once more, or no
 * more at all. The purchase with the lowest bound is gone on with first (E. L. Lawler, D. E. Wood,
 * Operations Research 14 (1966) 699), so none is looked into whose bound is above the answer; a promising
 * one is followed further, to have something to compare with.
 */

import { Bound } from "./buy_bound.js";
import { Deal } from "./buy_deal.js";
import { Queue } from "./queue.js";

/** @typedef {import("./buy_problem.js").Model} Model */

/**
 * @typedef {object} Found
 * @property {number} weight
 * @property {number[]} times how often each offer is bought
 */

/**
 * A purchase that is not yet enough, and what it can go on with.
 * @typedef {object} Level
 * @property {readonly number[]} bought the offers so far
 * @property {number} spent their weight
 * @property {Int32Array} have pieces by kind
 * @property {import("./buy_deal.js").Lacking[]} lacking
 * @property {Uint8Array} open whether an offer may still be bought
 * @property {Float64Array} worth of a place, by group, as the bound found it
 * @property {number} bound what it comes to at least, once it is enough
 * @property {number[]} tries offers to go on with, the most promising first; `NONE` to go on without the one before
 * @property {number[]} rises by how much each of them raises the bound
 * @property {number} next which of them comes next
 * @property {number} least what the next one comes to at least
 */

const ROOT_ROUNDS = 120;
const ROUNDS = 6;
const NONE = -1;

// Found by measuring on purchases of shops, see tests/browser/test_buy_speed.py. All shares but the last are of the
// way from the bound to what is known.

/** An offer is settled first if it raises the bound by less. */
const LITTLE = 0.1;
/** A purchase is followed further if its bound is not farther above the lowest. */
const NEAR = 0.3;
/** An offer is dear if it costs so much of what may still be spent. */
const DEAR = 0.1;
/** As long as nothing is known, what is to be expected above the bound. */
const EXPECTED = 1.1;

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
    /** Whether an offer brings what is lacking at present. */
    this.helps = new Uint8Array(model.weights.length);
    /** @type {Queue<Level>} */
    this.levels = new Queue(({ least }) => least);
    /** @type {number[][]} */
    this.sellers = model.caps.map(() => []);
    model.brings.forEach((own, offer) => own.forEach(({ kind }) => this.sellers[kind].push(offer)));

    const open = Uint8Array.from(model.brings, (own) => (own.length ? 1 : 0));
    const worth = firstWorth(model);
    this.bounds.price(open);
    const have = Int32Array.from(model.shelf);
    this.bounds.climb(worth, open, have, Infinity, ROOT_ROUNDS);
    /** The level that is gone on with at once, whatever waits. @type {Level | null} */
    this.dive = this.visit({ bought: [], spent: 0, have, lacking: this.deal.out(have), open, worth, bound: 0 });
  }

  /** No purchase that was not met weighs less. */
  get bound() {
    return Math.min(this.levels.least, this.dive?.least ?? Infinity);
  }

  /**
   * Tries so many more purchases.
   * @param {number} nodes
   * @returns {boolean} whether there is more to do
   */
  step(nodes) {
    const end = Math.min(this.nodes + nodes, this.mostNodes);
    while (this.nodes < end) {
      const level = this.dive ?? this.levels.take();
      this.dive = null;
      if (!level || level.least >= this.limit) return false;
      this.nodes++;
      const child = this.child(level);
      this.keep(level);
      if (child && this.isToDive(child)) this.dive = child;
      else if (child) this.levels.put(child);
    }
    return this.bound < this.limit && this.nodes < this.mostNodes;
  }

  /**
   * @param {Level} level
   * @returns {Level | null} the next purchase to go on with from there
   */
  child(level) {
    const offer = level.tries[level.next++];
    if (offer !== NONE) return this.buy(offer, level);
    const { bought, spent, have, lacking, open, worth, bound } = level;
    return this.visit({ bought, spent, have, lacking, open, worth: worth.slice(), bound });
  }

  /** @param {Level} child */
  isToDive(child) {
    const { least } = this.levels;
    return !this.second || child.least <= least + (this.limit - least) * NEAR;
  }

  /**
   * Lets a level wait, as long as it has something to go on with.
   * @param {Level} level
   */
  keep(level) {
    if (level.next === level.tries.length) return;
    level.least = level.bound + level.rises[level.next];
    if (level.least < this.limit) this.levels.put(level);
  }

  /** What a purchase must weigh less than. */
  get limit() {
    const known = this.nodes * 2 < this.mostNodes ? this.second : this.best;
    return known ? known.weight : Infinity;
  }

  /**
   * @param {number} offer
   * @param {Level} level
   * @returns {Level | null}
   */
  buy(offer, { bought, spent, have, open, worth, bound }) {
    const { brings, caps, weights } = this.model;
    const then = have.slice();
    for (const { kind, count } of brings[offer]) then[kind] = Math.min(caps[kind], then[kind] + count);
    const still = open.slice();
    open[offer] = 0;
    return this.visit({
      bought: [...bought, offer],
      spent: spent + weights[offer],
      have: then,
      lacking: this.deal.out(then),
      open: still,
      worth: worth.slice(),
      bound,
    });
  }

  /**
   * @param {Omit<Level, "tries" | "rises" | "next" | "least">} at its bound may still be too low
   * @returns {Level | null} null where there is nothing to go on with
   */
  visit({ bought, spent, have, lacking, open, worth, bound: before }) {
    if (!lacking.length) {
      this.note(bought);
      return null;
    }
    const { bounds, rises } = this;
    bounds.price(open);
    const bound = Math.max(before, spent + bounds.climb(worth, open, have, this.limit - spent, ROUNDS));
    if (bound >= this.limit) return null;
    for (let offer = 0; offer < open.length; offer++) {
      if (!open[offer]) continue;
      rises[offer] = bounds.rise(offer, have);
      if (bound + rises[offer] >= this.limit) open[offer] = 0;
    }
    let tries = this.fewestTries(lacking, open).sort((a, b) => rises[a] - rises[b]);
    if (!tries.length) return null;
    const first = this.settledFirst(tries, open, bound, spent);
    if (first !== NONE) tries = [first, NONE];
    const own = tries.map((offer) => (first === NONE ? rises[offer] : 0));
    return { bought, spent, have, lacking, open, worth, bound, tries, rises: own, next: 0, least: bound + own[0] };
  }

  /**
   * The dearest offer, sets before all others, of those that may well be bought.
   * @param {readonly number[]} tries
   * @param {Uint8Array} open
   * @param {number} bound
   * @param {number} spent
   * @returns {number} `NONE` where nothing is dear enough, or nearly all offers are sets
   */
  settledFirst(tries, open, bound, spent) {
    const { mixed } = this.bounds;
    const { weights } = this.model;
    if (mixed.length * 2 > weights.length) return NONE;
    const end = this.limit === Infinity ? bound * EXPECTED : this.limit;
    const most = (end - bound) * LITTLE;
    const dearest = (/** @type {readonly number[]} */ offers) => {
      const likely = offers.filter((offer) => open[offer] && this.helps[offer] && this.rises[offer] <= most);
      return likely.reduce((best, offer) => (best === NONE || weights[offer] > weights[best] ? offer : best), NONE);
    };
    const set = dearest(mixed.map(({ offer }) => offer));
    if (set !== NONE) return set;
    const pack = dearest(tries);
    return pack !== NONE && weights[pack] >= (end - spent) * DEAR ? pack : NONE;
  }

  /**
   * Offers of which one at least must be bought. Notes in `helps` all that bring what is lacking.
   * @param {{rivals: number[]}[]} lacking
   * @param {Uint8Array} open
   */
  fewestTries(lacking, open) {
    /** @type {number[] | null} */
    let fewest = null;
    this.helps.fill(0);
    for (const { rivals } of lacking) {
      const seen = new Uint8Array(open.length);
      const own = [];
      for (const group of rivals) {
        for (const kind of this.model.kindsOf[group]) {
          for (const offer of this.sellers[kind]) {
            if (open[offer] && !seen[offer]) own.push(offer);
            seen[offer] = this.helps[offer] = 1;
          }
        }
      }
      if (!fewest || own.length < fewest.length) fewest = own;
    }
    return fewest ?? [];
  }

  /**
   * Keeps a purchase that is enough, without what it can do without.
   * @param {readonly number[]} bought
   */
  note(bought) {
    const { weights } = this.model;
    const times = this.model.brings.map(() => 0);
    for (const offer of bought) times[offer]++;
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
