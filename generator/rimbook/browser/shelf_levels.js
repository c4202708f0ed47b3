/**
 * How much to keep in a drawer, when to order, and what runs short all the same, as `bench/shelf_levels.py`
 * works it out: S = the least S with P(D ≤ S) ≥ service. A set is enough as long as each of its parts is.
 */

import { atMost, enough, exactly, shortfall } from "./shelf_poisson.js";
import { exactSum } from "./shelf_sum.js";
import { coverYears, leadYears, rules } from "./shelf_terms.js";

/** @typedef {import("./shelf_terms.js").Terms} Terms */

/**
 * Pieces of other parts, used up first at the places where they serve: so much is asked there a year.
 * @typedef {{count: number, aYear: number}} Spare
 */

/**
 * What is asked of one drawer in a year: pieces by part, and how many of each one unit holds. `loose` are
 * pieces that lie beside whole sets. What the places of `spares` ask for is not in `aYear`; of spares in one
 * row each also serves the places of those before it.
 * @typedef {object} Load
 * @property {ReadonlyMap<string, number>} aYear
 * @property {ReadonlyMap<string, number>} aUnit
 * @property {ReadonlyMap<string, number>} loose
 * @property {readonly (readonly Spare[])[]} spares
 */

/**
 * Units of one drawer. `reorder`: with fewer than that an order cannot wait for the next review. `upTo`: what
 * an order brings it back to. `chance` that it does not run short between two orders, and `without`, the
 * same with one unit less. `shortAYear`: pieces that are asked for and not there, on average.
 * @typedef {{reorder: number, upTo: number, chance: number, without: number, shortAYear: number}} Levels
 */

/**
 * The chance that so many units last for a time. What its spares lack is taken out of the drawer.
 * @param {number} units
 * @param {Load} load
 * @param {number} years
 */
export function lasts(units, { aYear, aUnit, loose, spares }, years) {
  if (spares.length) {
    const [rest] = aYear.values();
    return exactSum(lacking(spares, years).map((chance, n) => chance * atMost(units - n, rest * years)));
  }
  let chance = 1;
  for (const [part, yearly] of aYear) {
    chance *= atMost(units * (aUnit.get(part) ?? 1) + (loose.get(part) ?? 0), yearly * years);
  }
  return chance;
}

/**
 * The least number of units that lasts for a time with at least this chance.
 * @param {Load} load
 * @param {number} years
 * @param {number} service
 */
export function leastUnits(load, years, service) {
  const { aYear, aUnit, loose, spares } = load;
  let units = 0;
  for (const [part, yearly] of aYear) {
    const lacks = enough(yearly * years, service) - (loose.get(part) ?? 0);
    units = Math.max(units, Math.ceil(lacks / (aUnit.get(part) ?? 1)));
  }
  if (aYear.size > 1 || spares.length) {
    const { sure } = rules().poisson;
    const asked = [...aYear.values(), ...spares.flat().map((spare) => spare.aYear)];
    const most = asked.reduce((sum, yearly) => sum + enough(yearly * years, sure), units);
    while (units < most && lasts(units, load, years) < service) units++;
  }
  return units;
}

/**
 * The chances that the spares lack 0, 1, 2 … pieces in all.
 * @param {readonly (readonly Spare[])[]} spares
 * @param {number} years
 */
function lacking(spares, years) {
  return spares.map((row) => beyond(row, years)).reduce(joined, [1]);
}

/**
 * The chances that one row lacks 0, 1, 2 … pieces. What a spare lacks is taken out of the next one.
 * @param {readonly Spare[]} row
 * @param {number} years
 */
function beyond(row, years) {
  const { sure } = rules().poisson;
  let found = [1];
  for (const { count, aYear } of row) {
    const mean = aYear * years;
    const asked = Array.from({ length: enough(mean, sure) + 1 }, (_, pieces) => exactly(pieces, mean));
    const wanted = joined(found, asked);
    found = [exactSum(wanted.slice(0, count + 1)), ...wanted.slice(count + 1)];
  }
  return found;
}

/**
 * The chances of the sum of two counts that have nothing to do with each other.
 * @param {readonly number[]} some
 * @param {readonly number[]} others
 * @returns {number[]}
 */
function joined(some, others) {
  const sums = Array(some.length + others.length - 1).fill(0);
  some.forEach((chance, at) => others.forEach((other, more) => (sums[at + more] += chance * other)));
  return sums;
}

/**
 * @param {Load} load
 * @param {Terms} terms
 * @returns {Levels}
 */
export function levels(load, terms) {
  const cover = coverYears(terms);
  const upTo = leastUnits(load, cover, terms.service);
  const short = [...load.aYear].map(([part, yearly]) => shortAYear(upTo * (load.aUnit.get(part) ?? 1), yearly, terms));
  return {
    reorder: leastUnits(load, leadYears(terms), terms.service),
    upTo,
    chance: lasts(upTo, load, cover),
    without: upTo ? lasts(upTo - 1, load, cover) : 0,
    shortAYear: exactSum(short),
  };
}

/**
 * Pieces a year that are asked for and not there, where each review fills up to so many pieces: what is lacking
 * at the end of a cycle less what was lacking at its beginning, times cycles a year. Looked at all the time,
 * it is the chance that the drawer is empty times the demand.
 * @param {number} pieces
 * @param {number} yearly
 * @param {Terms} terms
 */
export function shortAYear(pieces, yearly, terms) {
  const lead = leadYears(terms);
  const review = coverYears(terms) - lead;
  if (review === 0) return pieces ? yearly * (1 - atMost(pieces - 1, yearly * lead)) : yearly;
  const missing = shortfall(pieces, yearly * (lead + review)) - shortfall(pieces, yearly * lead);
  return Math.max(0, missing) / review;
}
