/**
 * How many are asked for in a while, when breakages come by themselves: the Poisson distribution, as
 * `bench/shelf_poisson.py` works it out. P(D = k) = m^k·e^−m/k!. Weights are taken from the likeliest count
 * outwards by P(k + 1)/P(k) = m/(k + 1) and divided by their sum.
 */

import { exactSum } from "./shelf_sum.js";
import { rules } from "./shelf_terms.js";

/** The chances of `first`, `first + 1` … and of at most so many.
 * @typedef {{first: number, chances: number[], atMost: number[]}} Table
 */

const MOST_TABLES = 4096;

/** @type {Map<number, Table>} */
const tables = new Map();

/**
 * The chance that no more than `count` are asked for, where `mean` are on average: P(D ≤ S). Throws RangeError
 * for a mean below 0 or beyond the largest.
 * @param {number} count
 * @param {number} mean
 */
export function atMost(count, mean) {
  const { first, atMost: sums } = tableOf(mean);
  return count < first ? 0 : sums[Math.min(count - first, sums.length - 1)];
}

/**
 * The chance that just so many are asked for: P(D = k). Throws as `atMost`.
 * @param {number} count
 * @param {number} mean
 */
export function exactly(count, mean) {
  const { first, chances } = tableOf(mean);
  return chances[count - first] ?? 0;
}

/**
 * The least count that is enough with at least this chance: the least S with P(D ≤ S) ≥ service. Throws
 * RangeError for a service that is not between 0 and 1, and as `atMost`.
 * @param {number} mean
 * @param {number} service
 */
export function enough(mean, service) {
  if (!(service > 0 && service < 1)) {
    throw new RangeError(`The service level is ${service}; expected a number between 0 and 1, as 0.95.`);
  }
  const { first, atMost: sums } = tableOf(mean);
  let low = 0;
  let high = sums.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sums[middle] < service) low = middle + 1;
    else high = middle;
  }
  return first + Math.min(low, sums.length - 1);
}

/**
 * How many are lacking on average, where `count` are there: E[(D − S)+]. Throws as `atMost`.
 * @param {number} count
 * @param {number} mean
 */
export function shortfall(count, mean) {
  const { first, chances } = tableOf(mean);
  if (count < first) return mean - count;
  const lacking = [];
  for (let at = count - first + 1; at < chances.length; at++) lacking.push((first + at - count) * chances[at]);
  return exactSum(lacking);
}

/**
 * @param {number} mean
 * @returns {Table}
 */
function tableOf(mean) {
  let found = tables.get(mean);
  if (found === undefined) {
    if (tables.size >= MOST_TABLES) tables.clear();
    found = worked(mean);
    tables.set(mean, found);
  }
  return found;
}

/**
 * @param {number} mean
 * @returns {Table}
 */
function worked(mean) {
  const { largestMean, idle } = rules().poisson;
  if (!(mean >= 0 && mean <= largestMean)) {
    throw new RangeError(`The mean demand is ${mean}; expected a number from 0 to ${largestMean}.`);
  }
  const likeliest = Math.floor(mean);
  const below = [];
  let weight = 1;
  for (let count = likeliest; count > 0; count--) {
    weight *= count / mean;
    if (weight < idle) break;
    below.push(weight);
  }
  const above = [1];
  weight = 1;
  for (let count = likeliest + 1; weight >= idle && mean > 0; count++) {
    weight *= mean / count;
    above.push(weight);
  }
  const weights = [...below.reverse(), ...above];
  const whole = exactSum(weights);
  const chances = weights.map((each) => each / whole);
  let sum = 0;
  const sums = chances.map((each) => (sum += each));
  return { first: likeliest - below.length, chances, atMost: sums.map((each) => Math.min(1, each)) };
}
