/**
 * The marks on a sheet as one frozen value, and all that a finger can do to them. Nothing here changes a
 * sheet: each function gives a new one.
 */

/** What was seen at a hole. A hole without a mark was not looked at. */
export const SEEN = /** @type {const} */ (["sound", "grooved", "split", "missing", "low"]);

/** What a frame is looked over for. */
export const CHECKS = /** @type {const} */ (["crack", "edge", "crushed"]);

/** What was found of it. */
export const FOUND = /** @type {const} */ (["not looked", "none", "found"]);

/** More quarter turns than this no part survives. */
export const MOST_TURNS = 9;

/** Two ways of working. */
export const WAYS = /** @type {const} */ (["unhurried", "against the clock"]);

export const MOST_MINUTES = 240;

/** @typedef {typeof SEEN[number]} Seen */
/** @typedef {typeof CHECKS[number]} Check */
/** @typedef {typeof FOUND[number]} Found */
/** @typedef {typeof WAYS[number]} Way */

/**
 * @typedef {object} Mark
 * @property {Seen} seen
 * @property {number} turns quarter turns it has had; 0 unless it is grooved
 */

/**
 * A mark whose hole is not in this version of the map, or not where it was: a person must say which
 * hole was meant.
 * @typedef {object} Doubt
 * @property {Mark} mark
 * @property {string} from the hole's address in the other version
 * @property {string} to the same, or the last of a row of sound holes
 * @property {string} code what tells the hole, or the row, from others
 */

/**
 * @typedef {object} Sheet
 * @property {Readonly<Record<string, Mark>>} marks by address
 * @property {Readonly<Record<Check, Found>>} checks
 * @property {Way} way
 * @property {number | null} minutes left, if it is against the clock and somebody said
 * @property {readonly Doubt[]} doubts
 * @property {Mark | null} last the last mark that was given; not part of the address
 */

/** @type {Sheet} */
export const EMPTY = {
  marks: {},
  checks: { crack: "not looked", edge: "not looked", crushed: "not looked" },
  way: "unhurried",
  minutes: null,
  doubts: [],
  last: null,
};

/**
 * Marks some holes alike. No mark takes theirs away.
 * @param {Sheet} sheet
 * @param {readonly string[]} addresses
 * @param {Mark | null} mark
 * @returns {Sheet}
 */
export function mark(sheet, addresses, mark) {
  return { ...put(sheet, addresses, mark), last: mark ? plain(mark) : sheet.last };
}

/**
 * Marks some holes like the last one.
 * @param {Sheet} sheet
 * @param {readonly string[]} addresses
 */
export function again(sheet, addresses) {
  return sheet.last ? mark(sheet, addresses, sheet.last) : sheet;
}

/**
 * Marks every hole without a mark as sound: all others were looked at.
 * @param {Sheet} sheet
 * @param {readonly string[]} order all holes
 */
export function restIsSound(sheet, order) {
  return put(sheet, order.filter((address) => !sheet.marks[address]), { seen: "sound", turns: 0 });
}

/**
 * The holes from one to another, both included: the shorter way round, clockwise if both are as long.
 * @param {readonly string[]} order holes clockwise
 * @param {string} from
 * @param {string} to
 * @returns {string[]} in the order of the sweep; empty where a hole is not on the rim
 */
export function sweep(order, from, to) {
  const [start, end] = [order.indexOf(from), order.indexOf(to)];
  if (start < 0 || end < 0) return [];
  const steps = (end - start + order.length) % order.length;
  const isClockwise = steps * 2 <= order.length;
  const count = (isClockwise ? steps : order.length - steps) + 1;
  const by = isClockwise ? 1 : -1;
  return Array.from({ length: count }, (_, at) => order[(start + by * at + order.length * 2) % order.length]);
}

/**
 * The hole of the same number on the other side. Null where there is none.
 * @param {readonly string[]} order
 * @param {string} address
 */
export function opposite(order, address) {
  const other = `${address.startsWith("R") ? "L" : "R"}${address.slice(1)}`;
  return order.includes(other) ? other : null;
}

/**
 * Copies the marks of one side to the other, over what is there.
 * @param {Sheet} sheet
 * @param {readonly string[]} order
 * @param {"R" | "L"} from
 * @returns {{sheet: Sheet, without: string[]}} and the marked holes that have no opposite
 */
export function mirror(sheet, order, from) {
  const own = order.filter((address) => address.startsWith(from) && sheet.marks[address]);
  /** @type {string[]} */
  const without = [];
  let now = sheet;
  for (const address of own) {
    const other = opposite(order, address);
    if (other) now = put(now, [other], sheet.marks[address]);
    else without.push(address);
  }
  return { sheet: now, without };
}

/**
 * @param {Sheet} sheet
 * @param {Check} check
 * @param {Found} found
 * @returns {Sheet}
 */
export function look(sheet, check, found) {
  return { ...sheet, checks: { ...sheet.checks, [check]: found } };
}

/**
 * @param {Sheet} sheet
 * @param {Way} way
 * @param {number | null} minutes
 * @returns {Sheet}
 */
export function work(sheet, way, minutes) {
  const known = minutes !== null && Number.isFinite(minutes);
  const left = known ? Math.min(MOST_MINUTES, Math.max(0, Math.round(minutes))) : null;
  return { ...sheet, way, minutes: way === "unhurried" ? null : left };
}

/**
 * Settles a doubt: the mark goes to a hole, or away.
 * @param {Sheet} sheet
 * @param {Doubt} doubt
 * @param {readonly string[]} addresses
 * @returns {Sheet}
 */
export function settle(sheet, doubt, addresses) {
  const doubts = sheet.doubts.filter((other) => other !== doubt);
  return put({ ...sheet, doubts }, addresses, doubt.mark);
}

/**
 * Whether nothing is written on the sheet.
 * @param {Sheet} sheet
 */
export function isBlank({ marks, checks, doubts }) {
  return !Object.keys(marks).length && !doubts.length && CHECKS.every((check) => checks[check] === "not looked");
}

/**
 * Marks some holes, as `mark` does, without making it the last mark.
 * @param {Sheet} sheet
 * @param {readonly string[]} addresses
 * @param {Mark | null} mark
 * @returns {Sheet}
 */
export function put(sheet, addresses, mark) {
  const own = mark && plain(mark);
  const marks = { ...sheet.marks };
  for (const address of addresses) {
    if (own) marks[address] = own;
    else delete marks[address];
  }
  return { ...sheet, marks };
}

/** @param {Mark} mark */
function plain({ seen, turns }) {
  const whole = Number.isInteger(turns) ? Math.min(MOST_TURNS, Math.max(0, turns)) : 0;
  return Object.freeze({ seen, turns: seen === "grooved" ? whole : 0 });
}
