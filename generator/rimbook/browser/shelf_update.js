/**
 * What a season of counting says about the rates: the gamma-Poisson update, as in `bench/shelf_update.py`. A
 * rate with the prior Gamma(a, b), of which x are counted in t years, has the posterior Gamma(a + x, b + t).
 */

import { levels } from "./shelf_levels.js";
import { stocked } from "./shelf_plan.js";
import { rules } from "./shelf_terms.js";

/** @typedef {import("./shelf_choice.js").Choice} Choice */
/** @typedef {import("./shelf_demand.js").Asked} Asked */
/** @typedef {import("./shelf_drawers.js").Filled} Filled */
/** @typedef {import("./shelf_levels.js").Levels} Levels */
/** @typedef {import("./shelf_plan.js").Drawer} Drawer */
/** @typedef {import("./shelf_plan.js").ShelfPlan} ShelfPlan */

/** @typedef {import("./shelf_used.js").Used} Used */
/** A distribution of a rate a year: its shape, and its rate in years. @typedef {{shape: number, rate: number}} Gamma */

/**
 * One part of one drawer: what was assumed, what is known now, and the levels of the drawer by both.
 * @typedef {object} Learned
 * @property {string} item
 * @property {string} part
 * @property {Used} used
 * @property {Gamma} prior
 * @property {Gamma} posterior
 * @property {Levels} old
 * @property {Levels} new
 */

/**
 * The plan by the new rates, what was learned, and the counts that belong to no drawer. What was used under the
 * id of a part that a drawer stands in for counts for the drawer.
 * @param {ShelfPlan} plan
 * @param {readonly Used[]} used
 * @returns {{plan: ShelfPlan, learned: Learned[], unknown: Used[]}}
 */
export function learn(plan, used) {
  const { counts, unknown } = byDrawer(plan.drawers, used);
  /** @type {Learned[]} */
  const learned = [];
  const filled = plan.drawers.map((drawer, at) => {
    const { item, levels: old } = drawer;
    const { load } = drawer.filled;
    const aYear = new Map(load.aYear);
    const own = [...(counts.get(at) ?? [])].map(([part, use]) => {
      const before = priorOf(load.aYear.get(part) ?? 0);
      const after = { shape: before.shape + use.count, rate: before.rate + use.years };
      aYear.set(part, after.shape / after.rate);
      return { item, part, used: use, prior: before, posterior: after, old };
    });
    const fresh = { ...load, aYear };
    const now = levels(fresh, plan.terms);
    learned.push(...own.map((each) => ({ ...each, new: now })));
    return atRates(drawer.filled, fresh);
  });
  return { plan: stocked(plan, filled), learned, unknown };
}

/**
 * The planned rate as a prior.
 * @param {number} aYear
 * @returns {Gamma}
 */
export function priorOf(aYear) {
  const { priorYears } = rules();
  return { shape: aYear * priorYears, rate: priorYears };
}

/**
 * The same drawer, whose places ask for more or less, those of a part all in the same proportion.
 * @param {Filled} filled
 * @param {import("./shelf_levels.js").Load} fresh
 * @returns {Filled}
 */
function atRates({ item, choices, load }, fresh) {
  const atRate = (/** @type {Asked} */ asked) => {
    const part = load.aYear.has(item) ? item : asked.part;
    const old = load.aYear.get(part) ?? 0;
    return old ? { ...asked, aYear: (asked.aYear * (fresh.aYear.get(part) ?? 0)) / old } : asked;
  };
  const dealt = choices.map((choice) => ({ ...choice, asked: choice.asked.map(atRate) }));
  return { item, choices: dealt, load: fresh, asked: dealt.flatMap(({ asked }) => asked) };
}

/**
 * For each drawer what was used of each of its parts; the same part twice is added up.
 * @param {readonly Drawer[]} drawers
 * @param {readonly Used[]} used
 */
function byDrawer(drawers, used) {
  /** @type {Map<number, Map<string, Used>>} */
  const counts = new Map();
  /** @type {Used[]} */
  const unknown = [];
  for (const use of used) {
    const found = placeOf(drawers, use.part);
    if (!found) {
      unknown.push(use);
      continue;
    }
    const { at, part } = found;
    const own = counts.get(at) ?? new Map();
    const before = own.get(part);
    const years = Math.max(use.years, before?.years ?? 0);
    own.set(part, { part, count: use.count + (before?.count ?? 0), years });
    counts.set(at, own);
  }
  return { counts, unknown };
}

/**
 * The drawer of a part: its own one, or the only one that stands in for it.
 * @param {readonly Drawer[]} drawers
 * @param {string} part
 * @returns {{at: number, part: string} | null}
 */
function placeOf(drawers, part) {
  const own = drawers.findIndex(({ filled }) => filled.load.aYear.has(part));
  if (own >= 0) return { at: own, part };
  const standing = drawers.flatMap(({ item, filled }, at) =>
    filled.load.aYear.has(item) && filled.asked.some((each) => each.part === part) ? [at] : [],
  );
  return standing.length === 1 ? { at: standing[0], part: drawers[standing[0]].item } : null;
}
