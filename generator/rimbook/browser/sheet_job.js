/**
 * From the marks to the whole job: what is done now, what it needs, what is bought for it, what the spare
 * parts of a set refresh, and what the player pays. All that the bench sheet shows follows from this value.
 */

import { offersOf, shelfOf } from "./buy_list.js";
import { needsOf, picks, refreshes, withRefreshes } from "./buy_needs.js";
import { chargesFor, spareOfSets } from "./sheet_charge.js";
import { pickList } from "./sheet_picks.js";
import { quote } from "./sheet_quote.js";
import { againstTheClock, tasks } from "./sheet_time.js";
import { judge } from "./sheet_verdict.js";

/** @typedef {import("./buy_needs.js").Accept} Accept */
/** @typedef {import("./buy_needs.js").PlacesNeed} PlacesNeed */
/** @typedef {import("./buy_problem.js").Problem} Problem */
/** @typedef {import("./buy_solver.js").Plan} Plan */
/** @typedef {import("./buy_solver.js").Unmet} Unmet */
/** @typedef {import("./shop.js").Shop} Shop */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_picks.js").Pick} Pick */
/** @typedef {import("./sheet_quote.js").Quote} Quote */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_time.js").Clock} Clock */
/** @typedef {import("./sheet_time.js").Task} Task */
/** @typedef {import("./sheet_verdict.js").Judged} Judged */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */

/**
 * What is chosen at the bench besides the marks.
 * @typedef {object} Choice
 * @property {Accept} accept which parts are taken
 * @property {boolean} refresh whether spare parts of a set go where they refresh what is worn
 */

/**
 * A piece and the part for it; null where none is to be had.
 * @typedef {object} Picked
 * @property {number} piece
 * @property {string | null} part
 */

/**
 * A piece that must be replaced and cannot be, and why.
 * @typedef {object} Lacking
 * @property {number} piece
 * @property {Unmet["why"]} why
 */

/**
 * The job. After a change of the marks the plan is null for a moment; all else is there at once.
 * @typedef {object} Job
 * @property {Judged} judged as the marks say
 * @property {Verdict[]} verdicts one for each piece, refreshes included
 * @property {Clock} clock
 * @property {Task[]} work what is done now, in order: without what no part is to be had for
 * @property {PlacesNeed[]} needs of the pieces to be replaced now
 * @property {Plan | null} plan null while it is worked out, and where nothing is known of the shelf or of
 *   prices, see `isStocked`
 * @property {Picked[]} picked pieces to be replaced now, refreshed ones too. Without a plan each gets the
 *   part that suits it best.
 * @property {Pick[]} picks the pick list of what is done now
 * @property {Lacking[]} lacking
 * @property {Picked[]} refreshable worn pieces that spare parts of a set can refresh for labour alone
 * @property {Choice} choice
 * @property {Quote} quote
 * @property {string[]} unpriced names of parts that the quote leaves out: nobody entered a price
 * @property {string} currency as in ISO 4217
 * @property {boolean} isStocked whether anything was entered that can be bought or lies on the shelf
 * @property {boolean} isPriced whether the quote is whole: an hourly rate was entered, and a price for every part
 * @property {boolean} isSettled whether nothing is still being worked out
 */

/**
 * The job as it changes. `listen` calls back at once, after every change, and when a plan is ready.
 * @typedef {object} Jobs
 * @property {() => Job} job
 * @property {(callback: (job: Job) => void) => void} listen
 */

/** @type {Choice} */
export const USUAL_CHOICE = { accept: "serves", refresh: false };

/**
 * What there is to do, before anything is bought.
 * @typedef {object} Doing
 * @property {Judged} judged
 * @property {Clock} clock
 * @property {PlacesNeed[]} needs
 * @property {Problem | null} problem to be solved; null where there is nothing to solve
 */

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Shop} shop
 * @param {Choice} choice
 * @returns {Doing}
 */
export function doing(frame, sheet, shop, { accept }) {
  const judged = judge(frame, sheet);
  const clock = clockFor(frame, judged, judged.verdicts, sheet, shop);
  const now = new Set(clock.now.map(({ piece }) => piece));
  const needs = needsOf(
    frame,
    judged.verdicts.filter(({ piece }) => now.has(piece)),
    accept,
  );
  const asked = needs.map(({ id, count, parts }) => ({ id, count, parts }));
  const isToSolve = needs.length > 0 && isStocked(shop);
  const problem = { needs: asked, offers: offersOf(shop.list, frame.sets), shelf: shelfOf(shop.list) };
  return { judged, clock, needs, problem: isToSolve ? problem : null };
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Shop} shop
 * @param {Choice} choice
 * @param {Doing} given
 * @param {Plan | null} plan of the problem; null while it is worked out
 * @returns {Job}
 */
export function jobOf(frame, sheet, shop, choice, { judged, clock, needs, problem }, plan) {
  const spare = plan ? spareOfSets(plan.cheapest, shop.list, frame.sets) : {};
  const refreshable = refreshes(frame, judged.verdicts, spare, choice.accept);
  const chosen = choice.refresh ? refreshable : [];
  const verdicts = withRefreshes(judged.verdicts, chosen);
  const whole = chosen.length ? clockFor(frame, judged, verdicts, sheet, shop) : clock;
  const now = new Set(whole.now.map(({ piece }) => piece));
  const parts = plan ? picks(needs, plan.cheapest.uses) : bestParts(needs);
  const picked = [...parts, ...chosen.filter(({ piece }) => now.has(piece))];
  const lacking = lackingOf(needs, parts, plan);
  const lacks = new Set(lacking.map(({ piece }) => piece));
  const work = whole.now.filter(({ piece }) => !lacks.has(piece));
  const { charged, unpriced } = chargesFor(frame, shop, parts, plan?.cheapest ?? null);
  return {
    judged,
    verdicts,
    clock: whole,
    work,
    needs,
    plan,
    picked,
    picks: pickList(
      frame,
      verdicts.filter(({ piece }) => now.has(piece)),
      picked,
    ),
    lacking,
    refreshable,
    choice,
    quote: quote(work, charged, shop.terms, shop.labour),
    unpriced,
    currency: shop.list.currency,
    isStocked: isStocked(shop),
    isPriced: shop.terms.hourly > 0 && !unpriced.length,
    isSettled: !problem || plan !== null,
  };
}

/**
 * In a cracked frame there is nothing to do.
 * @param {SheetFrame} frame
 * @param {Judged} judged
 * @param {readonly Verdict[]} verdicts
 * @param {Sheet} sheet
 * @param {Shop} shop
 */
function clockFor(frame, { ends }, verdicts, { way, minutes }, { labour }) {
  const all = ends ? [] : tasks(frame, verdicts, labour);
  return againstTheClock(all, way === "unhurried" ? null : minutes, labour);
}

/**
 * @param {readonly PlacesNeed[]} needs
 * @returns {Picked[]}
 */
function bestParts(needs) {
  return needs.flatMap(({ pieces, parts }) => pieces.map((piece) => ({ piece, part: parts[0] ?? null })));
}

/**
 * @param {readonly PlacesNeed[]} needs
 * @param {readonly Picked[]} parts
 * @param {Plan | null} plan
 * @returns {Lacking[]}
 */
function lackingOf(needs, parts, plan) {
  const why = new Map(plan?.unmet.map((each) => [each.need, each.why]));
  const needOf = new Map(needs.flatMap(({ id, pieces }) => pieces.map((piece) => [piece, id])));
  return parts
    .filter(({ part }) => part === null)
    .map(({ piece }) => ({ piece, why: why.get(needOf.get(piece) ?? "") ?? "nothing serves" }));
}

/** @param {Shop} shop */
function isStocked({ list }) {
  return list.sold.length > 0 || list.shelf.length > 0;
}
