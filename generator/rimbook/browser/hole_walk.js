/** The holes as a finger walks them: R1 down to the throat, then up the left side to L1. */

const BEYOND = 10_000;

/**
 * @typedef {object} Address
 * @property {"R" | "L"} side
 * @property {number} number
 */

/**
 * @param {string} text `R12`, with or without `#`, in any case
 * @returns {Address | null}
 */
export function readAddress(text) {
  const found = /^#?([RL])0{0,3}([1-9]\d{0,2})$/i.exec(text.trim());
  if (!found) return null;
  return { side: found[1]?.toUpperCase() === "L" ? "L" : "R", number: Number(found[2]) };
}

/** @param {Address} address */
export function written({ side, number }) {
  return `${side}${number}`;
}

/**
 * Where an address comes, clockwise from the middle of the head.
 * @param {Address} address
 */
export function clockwise({ side, number }) {
  return side === "R" ? number : BEYOND - number;
}

/**
 * Addresses clockwise, each once. What is no address is left out.
 * @param {Iterable<string>} texts
 * @returns {string[]}
 */
export function inOrder(texts) {
  const known = [...new Set(texts)].map(readAddress).filter((address) => address !== null);
  return known.sort((a, b) => clockwise(a) - clockwise(b)).map(written);
}

/** @type {Record<string, number>} */
const STEPS = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/**
 * The hole to which a key leads, round and round the rim. Null where the key leads nowhere.
 * @param {readonly string[]} order
 * @param {string} from
 * @param {string} key as in KeyboardEvent.key
 * @returns {string | null}
 */
export function step(order, from, key) {
  if (key === "Home") return order[0] ?? null;
  if (key === "End") return order.at(-1) ?? null;
  const by = STEPS[key];
  const at = order.indexOf(from);
  if (!by || at < 0) return null;
  return order[(at + by + order.length) % order.length] ?? null;
}
