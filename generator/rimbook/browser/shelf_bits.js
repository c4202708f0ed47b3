/** Sets of small whole numbers as one whole number of any length, a bit each. */

const MASK = 0xffff_ffffn;

/**
 * @param {bigint} set
 * @returns {number[]} what is in it, the smallest first
 */
export function bitsOf(set) {
  const found = [];
  let rest = set;
  for (let base = 0; rest; base += 32) {
    let word = Number(rest & MASK) | 0;
    while (word) {
      found.push(base + 31 - Math.clz32(word & -word));
      word &= word - 1;
    }
    rest >>= 32n;
  }
  return found;
}

/**
 * @param {bigint} set
 * @returns {number} how many are in it
 */
export function sizeOf(set) {
  let count = 0;
  let rest = set;
  while (rest) {
    let word = Number(rest & MASK) | 0;
    while (word) {
      count++;
      word &= word - 1;
    }
    rest >>= 32n;
  }
  return count;
}

/**
 * Adds a number to the set that a map has under a key, which may not be there yet.
 * @template Key
 * @param {Map<Key, bigint>} sets
 * @param {Key} key
 * @param {number} bit
 */
export function addBit(sets, key, bit) {
  const before = sets.get(key) ?? 0n;
  sets.set(key, before | (1n << BigInt(bit)));
}

/**
 * A key for a map: browsers tell large numbers apart by their last digits only, which makes maps slow.
 * @param {bigint} set
 */
export function keyOf(set) {
  return set.toString(32);
}
