/**
 * The search for the fewest drawers of one group of places, and for those that hold least.
 *
 * Fewest first: the cover is sought with one drawer more each time, branching on the place with the fewest
 * options, cut off where places without an option in common ask for more drawers than are left. Then all
 * covers of that size are looked through, and all ways to deal the places out to them, cut off where the
 * drawers hold too much already. The steps, their order and their limit are those of `bench/shelf_pool.py`.
 */

import { addBit, bitsOf, keyOf, sizeOf } from "./shelf_bits.js";
import { servedBy } from "./shelf_served.js";
import { rules } from "./shelf_terms.js";

/** @typedef {import("./shelf_pool.js").Level} Level */

/** Items of a group are numbers: their place in `names`. `total` is what their drawers hold in all.
 * @typedef {{items: number[], total: number}} Dealt
 */

/** The search took too many steps. */
class CutOff extends Error {}

/** One group. Sets of its places are whole numbers, a bit a place. */
export class Group {
  /**
   * @param {readonly number[]} places
   * @param {readonly (readonly string[])[]} options
   * @param {Level} level
   * @param {(item: string) => string | null} form
   */
  constructor(places, options, level, form) {
    this.places = places;
    this.levelOf = level;
    const kept = servedBy(places, options, form);
    /** @type {string[]} */
    this.names = kept.map(([name]) => name);
    /** @type {bigint[]} */
    this.covers = kept.map(([, covered]) => covered);
    /** By place its items, in the order of `names`. @type {number[][]} */
    this.options = places.map(() => []);
    this.covers.forEach((covered, item) => {
      for (const bit of bitsOf(covered)) this.options[bit].push(item);
    });
    /** Places, those with the fewest options first. */
    this.ordered = places.map((_, bit) => bit).sort((a, b) => this.options[a].length - this.options[b].length);
    this.everything = (1n << BigInt(places.length)) - 1n;
    this.steps = 0;
    /** What could not be covered with so many items. @type {Map<string, number>} */
    this.failed = new Map();
    /** By item the levels that are known, by its places. @type {Map<string, number>[]} */
    this.levels = this.names.map(() => new Map());
    /** When an item was last taken, so that no set has to be made for each step of `atLeast`. */
    this.taken = new Int32Array(this.names.length);
    this.turn = 0;
  }

  /**
   * As few items as cover all places, and whether that is proven.
   * @returns {{items: number[], isProven: boolean}}
   */
  fewest() {
    this.steps = 0;
    try {
      for (let count = this.atLeast(this.everything); ; count++) {
        const items = this.cover(this.everything, count);
        if (items) return { items, isProven: true };
      }
    } catch (error) {
      if (!(error instanceof CutOff)) throw error;
      return { items: this.greedy(), isProven: false };
    }
  }

  /**
   * The item of each place with the least sum of levels, and whether that is proven. From as many items as
   * `cover` has, which is taken where no better is found in time.
   * @param {readonly number[]} cover
   * @returns {{items: string[], isProven: boolean}}
   */
  least(cover) {
    this.steps = 0;
    /** @type {Dealt | null} */
    let best = null;
    let isProven = true;
    try {
      this.all(this.everything, cover.length, [], new Set(), (each) => {
        best = this.deal(each, best?.total ?? Infinity) ?? best;
      });
      isProven = this.steps <= rules().pool.mostSteps;
    } catch (error) {
      if (!(error instanceof CutOff)) throw error;
      isProven = false;
    }
    const found = /** @type {Dealt | null} */ (best);
    return { items: (found?.items ?? this.first(cover)).map((item) => this.names[item]), isProven };
  }

  step() {
    this.steps++;
    if (this.steps > rules().pool.mostSteps) throw new CutOff();
  }

  /**
   * The options of the uncovered place that has the fewest, those that cover most first.
   * @param {bigint} uncovered
   * @param {ReadonlySet<number>} without
   * @returns {number[]}
   */
  tightest(uncovered, without) {
    /** @type {number[] | null} */
    let found = null;
    for (const bit of bitsOf(uncovered)) {
      const own = without.size ? this.options[bit].filter((item) => !without.has(item)) : this.options[bit];
      if (!found || own.length < found.length) found = own;
    }
    const counted = (found ?? []).map((item) => ({ item, count: sizeOf(this.covers[item] & uncovered) }));
    counted.sort((a, b) => b.count - a.count || (this.names[a.item] < this.names[b.item] ? -1 : 1));
    return counted.map(({ item }) => item);
  }

  /**
   * So many uncovered places have no option in common: each takes an item of its own.
   * @param {bigint} uncovered
   */
  atLeast(uncovered) {
    const isUncovered = new Uint8Array(this.places.length);
    for (const bit of bitsOf(uncovered)) isUncovered[bit] = 1;
    const { taken } = this;
    const turn = ++this.turn;
    let count = 0;
    for (const bit of this.ordered) {
      if (!isUncovered[bit] || this.options[bit].some((item) => taken[item] === turn)) continue;
      for (const item of this.options[bit]) taken[item] = turn;
      count++;
    }
    return count;
  }

  /**
   * A cover of at most so many items, if there is one.
   * @param {bigint} uncovered
   * @param {number} count
   * @returns {number[] | null}
   */
  cover(uncovered, count) {
    if (!uncovered) return [];
    const key = keyOf(uncovered);
    if ((this.failed.get(key) ?? -1) >= count) return null;
    this.step();
    if (this.atLeast(uncovered) <= count) {
      for (const item of this.tightest(uncovered, new Set())) {
        const rest = this.cover(uncovered & ~this.covers[item], count - 1);
        if (rest) return [item, ...rest];
      }
    }
    this.failed.set(key, count);
    return null;
  }

  /**
   * Every cover of so many items, once: what an earlier branch took is left out of the later ones.
   * @param {bigint} uncovered
   * @param {number} count
   * @param {readonly number[]} taken
   * @param {ReadonlySet<number>} without
   * @param {(cover: readonly number[]) => void} visit
   */
  all(uncovered, count, taken, without, visit) {
    this.step();
    if (!uncovered) return visit(taken);
    if (this.atLeast(uncovered) > count || (this.failed.get(keyOf(uncovered)) ?? -1) >= count) return;
    const left = new Set(without);
    for (const item of this.tightest(uncovered, without)) {
      this.all(uncovered & ~this.covers[item], count - 1, [...taken, item], left, visit);
      left.add(item);
    }
  }

  /**
   * Deals the places out to a cover with the least sum of levels, if that is less than `most`.
   * @param {readonly number[]} cover
   * @param {number} most
   * @returns {Dealt | null}
   */
  deal(cover, most) {
    const ways = this.places.map((_, bit) => cover.filter((item) => this.options[bit].includes(item)));
    /** By item, as the others. @type {Map<number, bigint>} */
    const held = new Map(cover.map((item) => [item, 0n]));
    ways.forEach(([item, other], bit) => {
      if (other === undefined) addBit(held, item, bit);
    });
    const free = ways.flatMap((items, bit) => (items.length > 1 ? [bit] : []));
    /** @type {Dealt | null} */
    let best = null;
    const go = (/** @type {number} */ at, /** @type {number} */ total) => {
      this.step();
      if (total >= most) return;
      if (at === free.length) {
        best = { items: this.spread(held), total };
        most = total;
        return;
      }
      const bit = 1n << BigInt(free[at]);
      for (const item of ways[free[at]]) {
        const before = held.get(item) ?? 0n;
        held.set(item, before | bit);
        go(at + 1, total - this.level(item, before) + this.level(item, before | bit));
        held.set(item, before);
      }
    };
    if (free.length > rules().pool.deepest) throw new CutOff();
    try {
      go(0, [...held].reduce((sum, [item, places]) => sum + this.level(item, places), 0));
    } catch (error) {
      if (!(error instanceof CutOff) || !best) throw error;
    }
    return best;
  }

  /**
   * @param {number} item
   * @param {bigint} held
   */
  level(item, held) {
    if (!held) return 0;
    const key = keyOf(held);
    let found = this.levels[item].get(key);
    if (found === undefined) {
      found = this.levelOf(this.names[item], bitsOf(held).map((bit) => this.places[bit]));
      this.levels[item].set(key, found);
    }
    return found;
  }

  /** Items that cover all places, each time the one that covers most of what is left. */
  greedy() {
    const named = this.names.map((_, item) => item).sort((a, b) => (this.names[a] < this.names[b] ? -1 : 1));
    const taken = [];
    let uncovered = this.everything;
    while (uncovered) {
      const left = uncovered;
      const counts = named.map((item) => sizeOf(this.covers[item] & left));
      const item = named[counts.indexOf(Math.max(...counts))];
      taken.push(item);
      uncovered &= ~this.covers[item];
    }
    return taken;
  }

  /**
   * Each place to the first item of a cover that serves it.
   * @param {readonly number[]} cover
   * @returns {number[]}
   */
  first(cover) {
    return this.options.map((own) => cover.find((item) => own.includes(item)) ?? -1);
  }

  /**
   * @param {ReadonlyMap<number, bigint>} held
   * @returns {number[]} by place its item
   */
  spread(held) {
    const found = this.places.map(() => -1);
    for (const [item, places] of held) {
      for (const bit of bitsOf(places)) found[bit] = item;
    }
    return found;
  }
}
