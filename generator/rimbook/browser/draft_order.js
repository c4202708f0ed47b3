/** Places put in order with the least shift: the walk's order always holds. */

/**
 * A place on the walk and its millimetres along the rim. The middles of head and throat stand half a place
 * before the first hole and after the last.
 * @typedef {[number, number]} Slot
 */

/**
 * The places nearest to those wanted, by least squares, that keep a gap to each other and to both ends:
 * isotonic regression by pooling adjacent violators.
 * @param {readonly Slot[]} wanted in order of the walk
 * @param {Slot} first
 * @param {Slot} last
 * @param {number} gapMm
 * @returns {Slot[]}
 */
export function inOrder(wanted, [start, low], [end, high], gapMm) {
  const gap = Math.min(gapMm, Math.max(high - low, 0) / (end - start));
  const [floor, ceiling] = [low - start * gap, high - end * gap];
  /** @type {[number, number][]} sums and sizes of pools */
  const pools = [];
  for (const [slot, place] of wanted) {
    let [total, size] = [place - slot * gap, 1];
    for (;;) {
      const last = pools[pools.length - 1];
      if (!last || last[0] * size < total * last[1]) break;
      pools.pop();
      [total, size] = [total + last[0], size + last[1]];
    }
    pools.push([total, size]);
  }
  const level = pools.flatMap(([total, size]) => Array(size).fill(Math.min(Math.max(total / size, floor), ceiling)));
  return wanted.map(([slot], index) => [slot, level[index] + slot * gap]);
}

/**
 * The known places by slot, and all other slots spread evenly between their known neighbours.
 * @param {readonly Slot[]} known
 * @param {readonly number[]} slots
 * @returns {Map<number, number>}
 */
export function filled(known, slots) {
  const places = new Map(known);
  let waiting = 0;
  for (let at = 1; at < known.length; at++) {
    const [[start, low], [end, high]] = [known[at - 1], known[at]];
    for (; waiting < slots.length && slots[waiting] <= end; waiting++) {
      const slot = slots[waiting];
      if (!places.has(slot)) places.set(slot, low + ((high - low) * (slot - start)) / (end - start));
    }
  }
  return places;
}
