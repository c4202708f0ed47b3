/**
 * What a shelf is planned by, and the numbers of the working-out that are written once, in Python.
 *
 * The page hands these numbers over before anything is planned: `takeRules(value)`, with what
 * `site/shelf_rules.py` put into its data block. Whoever asks for them earlier is told so.
 */

const FORMAT = 1;

/**
 * Times in weeks, the service as a chance between 0 and 1, shares of restrings from 0 to 1 by kind of part.
 * @typedef {{lead: number, review: number, service: number, shares: Record<string, number>}} Terms
 */

/**
 * @typedef {object} Rules
 * @property {number} format
 * @property {number} weeksOfYear
 * @property {number} priorYears so many years of counting weigh as much as the planned rates
 * @property {number[]} services of the curve
 * @property {{largestMean: number, idle: number, sure: number}} poisson
 * @property {{mostSteps: number, deepest: number}} pool where the search for the fewest drawers is cut off
 * @property {{mostPieces: number}} packs
 * @property {{most: number, largestMean: number}} spares
 * @property {{mostCount: number, mostWeeks: number}} used
 * @property {{restrings: number}} most restrings that a shelf can serve between two orders
 */

/** @type {Rules | null} */
let taken = null;

/**
 * Takes over the numbers of the working-out. Throws where they are of another edition than this script.
 * @param {unknown} value
 */
export function takeRules(value) {
  const given = /** @type {Rules | null | undefined} */ (value);
  if (given?.format !== FORMAT) throw new Error("The numbers of the shelf are of another edition than this page.");
  taken = given;
}

/** @returns {Rules} */
export function rules() {
  if (taken === null) throw new Error("The numbers of the shelf were not handed over: takeRules() comes first.");
  return taken;
}

/**
 * From order to delivery, in years.
 * @param {Terms} terms
 */
export function leadYears({ lead }) {
  return lead / rules().weeksOfYear;
}

/**
 * What an order has to last for, in years: until the one after it arrives.
 * @param {Terms} terms
 */
export function coverYears({ lead, review }) {
  return (lead + review) / rules().weeksOfYear;
}

/**
 * Whether a shelf can be planned at all: no more restrings between two orders than a shelf can serve.
 * @param {readonly {restrings: number | null}[]} frames
 * @param {Terms} terms
 */
export function canBePlanned(frames, terms) {
  const yearly = frames.reduce((sum, { restrings }) => sum + (restrings ?? 0), 0);
  return yearly * coverYears(terms) <= rules().most.restrings;
}
