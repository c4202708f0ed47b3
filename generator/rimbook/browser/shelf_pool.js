/**
 * Which drawers to keep: the fewest that serve every place, and of those the ones that hold least. A minimum
 * set cover, worked out exactly on each group of places that hang together, as in `bench/shelf_pool.py`.
 */

import { Group } from "./shelf_cover.js";

/** What has to be kept of an item for some places, by their index. It never falls when one is added.
 * @typedef {(item: string, places: number[]) => number} Level
 */

/** For each place its item. `fewest` or `least` is false where the search was cut off before its proof.
 * @typedef {{items: string[], fewest: boolean, least: boolean}} Pooling
 */

/**
 * Gives each place one of its options so that the fewest items are used, then the least is kept. Throws for a
 * place without options.
 * @param {readonly (readonly string[])[]} options
 * @param {Level} level
 * @param {(item: string) => string | null} [form] items of the same form have the same level for the same places
 * @returns {Pooling}
 */
export function pool(options, level, form = () => null) {
  if (options.some((each) => each.length === 0)) throw new Error("A place has no options.");
  /** @type {Pooling} */
  const found = { items: options.map(() => ""), fewest: true, least: true };
  for (const places of groups(options)) {
    const group = new Group(places, options, level, form);
    const cover = group.fewest();
    const dealt = group.least(cover.items);
    found.fewest &&= cover.isProven;
    found.least &&= dealt.isProven;
    places.forEach((place, bit) => (found.items[place] = dealt.items[bit]));
  }
  return found;
}

/**
 * Places that hang together by a common option.
 * @param {readonly (readonly string[])[]} options
 * @returns {number[][]}
 */
function groups(options) {
  /** @type {Map<string, number[]>} */
  const asking = new Map();
  options.forEach((items, place) => {
    for (const item of items) asking.set(item, [...(asking.get(item) ?? []), place]);
  });
  const seen = new Set();
  const found = [];
  for (let start = 0; start < options.length; start++) {
    if (seen.has(start)) continue;
    seen.add(start);
    const group = [start];
    for (const place of group) {
      for (const other of options[place].flatMap((item) => asking.get(item) ?? [])) {
        if (seen.has(other)) continue;
        seen.add(other);
        group.push(other);
      }
    }
    found.push(group.sort((a, b) => a - b));
  }
  return found;
}
