/**
 * Which parts the player pays. A pack is paid by the piece, for its rest goes into the drawer. A set is paid
 * whole, for it was bought for this job; so what it holds is not paid again. A piece with a price of its
 * own on the shelf list costs that, and no markup is added.
 */

import { share } from "./money.js";

/** @typedef {import("./buy_list.js").PriceList} PriceList */
/** @typedef {import("./buy_solver.js").Purchase} Purchase */
/** @typedef {import("./shop.js").Shop} Shop */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_quote.js").Charged} Charged */

/**
 * @param {SheetFrame} frame
 * @param {Shop} shop
 * @param {readonly {part: string | null}[]} parts one for each piece that is replaced, refreshed ones left out
 * @param {Purchase | null} purchase null where none is known: then nothing comes out of a set
 * @returns {{charged: Charged[], unpriced: string[]}} and the names of parts without a price
 */
export function chargesFor(frame, { list, terms }, parts, purchase) {
  const nameOf = (/** @type {string} */ id) => frame.names[id] ?? id;
  const bought = purchase?.lines.map(({ offer, times }) => ({ ...list.sold[Number(offer)], times })) ?? [];
  /** @type {Charged[]} */
  const charged = bought
    .filter(({ part }) => frame.sets[part])
    .map(({ part, count, price, times }) => ({ name: packName(nameOf(part), count), count: times, each: price }));
  const free = purchase ? inSets(purchase, list, frame.sets) : {};
  /** @type {string[]} */
  const unpriced = [];
  for (const [part, count] of countOf(parts)) {
    const taken = purchase?.taken[part] ?? 0;
    const paid = taken + Math.max(0, count - taken - (free[part] ?? 0));
    if (!paid) continue;
    const own = list.shelf.find((row) => row.part === part)?.price ?? null;
    const packs = bought.filter((row) => row.part === part);
    const each = own ?? byThePiece(packs.length ? packs : cheapest(list, part), terms.half);
    if (each === null) unpriced.push(nameOf(part));
    else charged.push({ name: nameOf(part), count: paid, each, isFinal: own !== null });
  }
  return { charged, unpriced };
}

/**
 * What is left of the sets that are bought: it is paid for, so it can be fitted for labour alone.
 * @param {Purchase} purchase
 * @param {PriceList} list
 * @param {SheetFrame["sets"]} sets
 * @returns {Record<string, number>} pieces by part id
 */
export function spareOfSets(purchase, list, sets) {
  const held = Object.entries(inSets(purchase, list, sets));
  const left = held.map(([part, count]) => /** @type {const} */ ([part, Math.min(count, purchase.left[part] ?? 0)]));
  return Object.fromEntries(left.filter(([, count]) => count > 0));
}

/**
 * @param {Purchase} purchase
 * @param {PriceList} list
 * @param {SheetFrame["sets"]} sets
 */
function inSets({ lines }, list, sets) {
  /** @type {Record<string, number>} */
  const pieces = {};
  for (const { offer, times } of lines) {
    const { part, count } = list.sold[Number(offer)];
    for (const [held, each] of Object.entries(sets[part] ?? {})) {
      pieces[held] = (pieces[held] ?? 0) + each * count * times;
    }
  }
  return pieces;
}

/**
 * @param {readonly {part: string | null}[]} parts
 * @returns {Map<string, number>}
 */
function countOf(parts) {
  const counts = new Map();
  for (const { part } of parts) if (part !== null) counts.set(part, (counts.get(part) ?? 0) + 1);
  return counts;
}

/**
 * @param {readonly {price: number, count: number, times: number}[]} packs
 * @param {import("./money.js").Half} half
 */
function byThePiece(packs, half) {
  const sum = (/** @type {(pack: {price: number, count: number, times: number}) => number} */ of) =>
    packs.reduce((total, pack) => total + of(pack), 0);
  const pieces = sum(({ count, times }) => count * times);
  return pieces
    ? share(
        sum(({ price, times }) => price * times),
        1,
        pieces,
        half,
      )
    : null;
}

/**
 * @param {PriceList} list
 * @param {string} part
 */
function cheapest({ sold }, part) {
  const own = sold.filter((row) => row.part === part).sort((a, b) => a.price * b.count - b.price * a.count);
  return own.slice(0, 1).map((row) => ({ ...row, times: 1 }));
}

/**
 * @param {string} name
 * @param {number} count
 */
export function packName(name, count) {
  return count > 1 ? `${name}, pack of ${count}` : name;
}
