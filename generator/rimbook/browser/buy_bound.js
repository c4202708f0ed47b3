/**
 * How little the rest of a purchase must cost: never more than the truth.
 *
 * Each place gets a worth (the same within a group). The needs are worth so much together; what is
 * bought cannot bring more worth than its pieces have at the places they serve. So the cost of any good
 * purchase is at least the worth of all needs, plus the least that can be had of cost less worth: a
 * Lagrangean relaxation (M. L. Fisher, Management Science 27 (1981) 1), true for any worths. Kind by kind
 * that least is found exactly by the count of pieces, so it sees that packs come whole. The worths climb
 * by subgradient steps. All are whole numbers, so no rounding can spoil the bound.
 */

/** @typedef {import("./buy_problem.js").Model} Model */

const PATIENCE = 3;
const AIM = 1.05;

export class Bound {
  /** @param {Model} model */
  constructor(model) {
    this.model = model;
    const { asks, caps, brings, groupsOf } = model;
    /** Where the tables of a kind begin: 0 to `caps[kind]` pieces. */
    this.base = new Int32Array(caps.length + 1);
    caps.forEach((cap, kind) => (this.base[kind + 1] = this.base[kind] + cap + 1));
    /** What so many pieces cost in packs, and what they are worth, by kind. */
    this.costs = new Float64Array(this.base[caps.length]);
    this.worths = new Float64Array(this.base[caps.length]);
    /** Groups that a kind serves, those of most worth first. */
    this.sorted = groupsOf.map((own) => Int32Array.from(own));
    /** @type {{offer: number, count: number}[][]} packs of one kind, by kind */
    this.packs = caps.map(() => []);
    /** @type {{offer: number, kinds: Int32Array, counts: Int32Array}[]} offers with several kinds */
    this.mixed = [];
    brings.forEach((own, offer) => {
      const kinds = Int32Array.from(own, ({ kind }) => kind);
      const counts = Int32Array.from(own, ({ count }) => count);
      if (own.length === 1) this.packs[kinds[0]].push({ offer, count: counts[0] });
      else if (own.length) this.mixed.push({ offer, kinds, counts });
    });
    /** Cost less worth of each kind, where it is least. */
    this.leasts = new Float64Array(caps.length);
    /** Pieces that each group got, where cost less worth is least. */
    this.dealt = new Float64Array(asks.length);
  }

  /** @param {Uint8Array} open whether an offer may still be bought */
  price(open) {
    const { costs, base } = this;
    const { weights } = this.model;
    costs.fill(Infinity);
    this.packs.forEach((packs, kind) => {
      const start = base[kind];
      costs[start] = 0;
      for (const { offer, count } of packs) {
        if (!open[offer]) continue;
        for (let at = start + 1; at < base[kind + 1]; at++) {
          const cost = weights[offer] + (at - count > start ? costs[at - count] : 0);
          if (cost < costs[at]) costs[at] = cost;
        }
      }
    });
  }

  /**
   * The bound for certain worths, after `price`.
   * @param {Float64Array} worth of a place, by group
   * @param {Uint8Array} open
   * @param {ArrayLike<number>} have pieces by kind, no more than there can be use for
   */
  at(worth, open, have) {
    const { asks, caps } = this.model;
    this.dealt.fill(0);
    let total = 0;
    for (let group = 0; group < asks.length; group++) total += worth[group] * asks[group];
    for (let kind = 0; kind < caps.length; kind++) {
      this.fill(kind, worth);
      const pieces = this.most(kind, have[kind]);
      this.leasts[kind] = this.less(kind, have[kind], pieces);
      total += this.leasts[kind];
      this.hand(kind, 0, pieces, 1);
    }
    for (const each of this.mixed) if (open[each.offer]) total += this.mix(each, have);
    return total;
  }

  /**
   * Works out what pieces of a kind are worth: the best places come first.
   * @param {number} kind
   * @param {Float64Array} worth
   */
  fill(kind, worth) {
    const { worths } = this;
    const { asks } = this.model;
    const own = this.sorted[kind];
    for (let i = 1; i < own.length; i++) {
      const group = own[i];
      let at = i;
      for (; at > 0 && worth[own[at - 1]] < worth[group]; at--) own[at] = own[at - 1];
      own[at] = group;
    }
    let at = this.base[kind];
    let sum = 0;
    for (let i = 0; i < own.length; i++) {
      const each = worth[own[i]];
      for (let left = asks[own[i]]; left > 0; left--) worths[++at] = sum += each;
    }
  }

  /**
   * How many pieces of a kind make cost less worth least.
   * @param {number} kind
   * @param {number} have
   */
  most(kind, have) {
    const { costs, worths, base } = this;
    const cap = this.model.caps[kind];
    const start = base[kind];
    const end = start + cap;
    let best = start + have;
    let least = -worths[best];
    for (let at = best + 1; at <= end; at++) {
      const less = costs[at - have] - worths[at];
      if (less < least) {
        least = less;
        best = at;
      }
    }
    return best - start;
  }

  /**
   * @param {number} kind
   * @param {number} have
   * @param {number} pieces
   */
  less(kind, have, pieces) {
    const start = this.base[kind];
    return this.costs[start + pieces - have] - this.worths[start + pieces];
  }

  /**
   * What an offer with several kinds can take off the bound: its cost less the worth of its pieces, as
   * often as there can be use for it.
   * @param {{offer: number, kinds: Int32Array, counts: Int32Array}} mixed
   * @param {ArrayLike<number>} have
   */
  mix({ offer, kinds, counts }, have) {
    const { worths, base } = this;
    const { caps, weights } = this.model;
    let less = weights[offer];
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i];
      const end = have[kind] + counts[i];
      less -= worths[base[kind] + (end < caps[kind] ? end : caps[kind])] - worths[base[kind] + have[kind]];
    }
    if (less >= 0) return 0;
    let times = 0;
    kinds.forEach((kind, i) => (times = Math.max(times, Math.ceil((caps[kind] - have[kind]) / counts[i]))));
    kinds.forEach((kind, i) => this.hand(kind, have[kind], Math.min(caps[kind], have[kind] + counts[i]), times));
    return times * less;
  }

  /**
   * Notes which groups get the pieces from one count to another.
   * @param {number} kind
   * @param {number} start
   * @param {number} end
   * @param {number} times
   */
  hand(kind, start, end, times) {
    const { asks } = this.model;
    let at = 0;
    for (const group of this.sorted[kind]) {
      if (at >= end) return;
      const pieces = Math.min(end, at + asks[group]) - Math.max(start, at);
      if (pieces > 0) this.dealt[group] += pieces * times;
      at += asks[group];
    }
  }

  /**
   * Betters the worths, in place.
   * @param {Float64Array} worth
   * @param {Uint8Array} open
   * @param {ArrayLike<number>} have
   * @param {number} goal where to stop; may be Infinity
   * @param {number} rounds
   * @returns {number} the best bound; `at` was asked for its worths last
   */
  climb(worth, open, have, goal, rounds) {
    const { asks } = this.model;
    const trial = worth.slice();
    let best = this.at(worth, open, have);
    let now = best;
    let pace = 1;
    let idle = 0;
    let isLast = true;
    for (let round = 0; round < rounds && best < goal; round++) {
      let square = 0;
      for (let group = 0; group < asks.length; group++) {
        const lack = asks[group] - this.dealt[group];
        if (lack > 0 || trial[group] > 0) square += lack * lack;
      }
      if (square === 0) break;
      const aim = goal === Infinity ? best * AIM + 1 : goal;
      const step = (pace * (aim - now)) / square;
      for (let group = 0; group < asks.length; group++) {
        trial[group] = Math.max(0, Math.round(trial[group] + step * (asks[group] - this.dealt[group])));
      }
      now = this.at(trial, open, have);
      isLast = now > best;
      if (isLast) {
        best = now;
        worth.set(trial);
        idle = 0;
      } else if (++idle === PATIENCE) {
        pace /= 2;
        idle = 0;
        trial.set(worth);
        now = this.at(trial, open, have);
        isLast = true;
      }
    }
    if (!isLast) this.at(worth, open, have);
    return best;
  }

  /**
   * By how much the bound rises if an offer is bought once more, after `at`.
   * @param {number} offer
   * @param {ArrayLike<number>} have
   */
  rise(offer, have) {
    const { brings, caps, weights } = this.model;
    let total = weights[offer];
    for (const { kind, count } of brings[offer]) {
      const then = Math.min(caps[kind], have[kind] + count);
      total += this.less(kind, then, this.most(kind, then)) - this.leasts[kind];
    }
    return Math.max(0, total);
  }
}
