/**
 * What a shelf plan says in words: what to order and why, what to keep and why, what cannot be planned. The same
 * words as `site/shelf_words.py`. `items` are those of the plan.
 */

import { decimals } from "./millimetres.js";
import { isSet } from "./shelf_choice.js";
import { packsFor } from "./shelf_packs.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./shelf_choice.js").Items} Items */
/** @typedef {import("./shelf_demand.js").Unplanned} Unplanned */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */
/** @typedef {import("./shelf_terms.js").Terms} Terms */

/** @type {Record<Unplanned["why"], string>} */
const UNPLANNED = {
  "restrings unknown": "nobody has written down how often it is restrung",
  "part unknown": "nobody knows what part sits there",
  "bore unknown": "the bore is not measured",
  "not sold": "nobody in this book sells it, and nothing that is sold surely serves",
};
/** @type {Record<Unplanned["why"], string>} */
const MEND = {
  "restrings unknown": "Write restrings_per_year in the club’s file.",
  "part unknown": "Name the part in the map of the frame.",
  "bore unknown": "Measure the bore and write it in the map.",
  "not sold": "Write its packs in the catalogue, or a set that holds it.",
};

/**
 * A chance in per cent, never rounded up to certainty: `97.7 %`, `over 99.9 %`.
 * @param {number} chance
 */
export function percent(chance) {
  return chance > 0.9995 ? "over 99.9\u00a0%" : `${decimals(100 * chance, 1)}\u00a0%`;
}

/**
 * `7 weeks`, `1.5 weeks`, `1 week`.
 * @param {number} count
 */
export function weeks(count) {
  return `${decimals(count, 1)}\u00a0week${count === 1 ? "" : "s"}`;
}

/**
 * A demand a year: `5.2`, `0.16`, `0.004`.
 * @param {number} rate
 */
export function yearly(rate) {
  return decimals(rate, rate >= 10 ? 1 : rate >= 0.1 ? 2 : 3);
}

/**
 * The frames a drawer serves.
 * @param {Drawer} drawer
 * @param {Readonly<Record<string, string>>} names of the frames
 */
export function serves({ filled }, names) {
  const own = [...new Set(filled.asked.map(({ frame }) => names[frame]))];
  return listed(
    own.sort((a, b) => byCharacter(a.toLowerCase(), b.toLowerCase()) || byCharacter(a, b)),
  );
}

/**
 * The parts on the maps that a drawer stands in for, or nothing.
 * @param {Drawer} drawer
 * @param {Items} items
 */
export function standsIn({ item, filled }, items) {
  if (isSet(item, items)) return "";
  const own = new Set(filled.asked.map(({ part }) => part));
  own.delete(item);
  return named([...own], items);
}

/**
 * The parts for which a set is opened, or nothing.
 * @param {Drawer} drawer
 * @param {Items} items
 */
export function openedFor({ item, filled }, items) {
  return isSet(item, items) ? named([...filled.load.aYear.keys()], items) : "";
}

/**
 * What lies in a drawer today.
 * @param {Drawer} drawer
 * @param {Items} items
 */
export function here({ stock }, items) {
  const units = stock.units ? String(stock.units) : "none";
  return [units, ...counts("of them", stock.others, items), ...beside(stock, items)].join("; ");
}

/**
 * What counts for a drawer beside its units: `loose 1 Weir side strip; first use up 6 Barrel 2.0`.
 * @param {Drawer} drawer
 * @param {Items} items
 */
export function countsToo({ stock }, items) {
  return beside(stock, items).join("; ");
}

/**
 * @param {Drawer["stock"]} stock
 * @param {Items} items
 */
function beside({ loose, spares }, items) {
  return [...counts("loose", loose, items), ...counts("first use up", spares, items)];
}

/**
 * @param {string} how
 * @param {ReadonlyMap<string, number>} pieces by part
 * @param {Items} items
 */
function counts(how, pieces, items) {
  return [...pieces].map(([part, count]) => `${how} ${count} ${nameOf(part, items)}`);
}

/**
 * The packs to order: `2 packs of 25 and 3 packs of 1`.
 * @param {Drawer} drawer
 * @param {Items} items
 * @param {Readonly<Record<number, number>> | null} [prices] by size
 */
export function packs({ item, order }, items, prices = null) {
  if (order === null) return "";
  const own = prices && Object.keys(prices).length ? prices : null;
  const sizes = own ? Object.keys(own).map(Number) : (items[item]?.packs ?? []);
  return listed(packsFor(order.units, sizes, own).map(([size, count]) => `${counted(count, "pack")} of ${size}`));
}

/**
 * Why to order.
 * @param {Drawer} drawer
 * @param {Terms} terms
 */
export function whyOrder({ aYear, order }, terms) {
  if (order === null) return "";
  return (
    `About ${yearly(aYear)} a year are asked for. Chance to last ${weeks(terms.lead + terms.review)}: ` +
    `${percent(order.before)}, with this order ${percent(order.after)}.`
  );
}

/**
 * Keep so many of these, or none, with the reason.
 * @param {Drawer} drawer
 * @param {Terms} terms
 */
export function advice({ aYear, levels }, terms) {
  const { upTo, chance, without } = levels;
  const span = weeks(terms.lead + terms.review);
  if (upTo === 0) {
    const asked = aYear ? `about ${yearly(aYear)} a year` : "none";
    return (
      `Keep none, order when one is needed: ${asked} will be asked for, and with a chance of ` +
      `${percent(chance)} none in ${span}.`
    );
  }
  const less = upTo === 1 ? "none" : String(upTo - 1);
  return (
    `Keep ${upTo}: with ${less} the drawer lasts ${span} with a chance of ` +
    `${percent(without)} only, with ${upTo} of ${percent(chance)}.`
  );
}

/**
 * What of a frame cannot be planned, why, and what to do.
 * @param {Unplanned} each
 * @param {Items} items
 */
export function unplanned({ why, pieces, holes, part }, items) {
  const because = `${UNPLANNED[why]}. ${MEND[why]}`;
  if (!holes) return `all of it: ${because}`;
  const known = part !== null && Object.hasOwn(items, part) ? `, ${items[part].name}` : "";
  return `${counted(pieces, "piece")}${known} (${holes}): ${because}`;
}

/**
 * The names of parts in one line.
 * @param {readonly string[]} parts
 * @param {Items} items
 */
function named(parts, items) {
  return listed(parts.map((part) => nameOf(part, items)).sort(byCharacter));
}

/**
 * @param {string} part
 * @param {Items} items
 */
function nameOf(part, items) {
  return items[part]?.name ?? part;
}

/**
 * Character by character, as Python orders text: JavaScript by itself compares halves of rare ones.
 * @param {string} one
 * @param {string} other
 */
function byCharacter(one, other) {
  const [own, its] = [[...one], [...other]];
  const at = own.findIndex((character, place) => character !== its[place]);
  if (at < 0) return own.length - its.length;
  return (own[at].codePointAt(0) ?? 0) - (its[at]?.codePointAt(0) ?? -1);
}
