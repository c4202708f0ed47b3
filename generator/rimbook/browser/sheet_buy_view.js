/** What to buy for the job, and why: the cheapest purchase, the next best, and what becomes of the rest. */

import { choiceView } from "./sheet_choice_view.js";
import { whereOf } from "./sheet_clock_view.js";
import { el, fill } from "./dom.js";
import { shown } from "./money.js";
import { Naming } from "./sheet_purchase_view.js";
import { holesWords } from "./sheet_words.js";
import { counted } from "./words.js";

/** @typedef {import("./dom.js").Child} Child */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./sheet_jobs.js").OwnJobs} OwnJobs */
/** @typedef {import("./shop.js").Shop} Shop */

const ACCEPTS = /** @type {const} */ ([
  ["own", "Only the part that is fitted now"],
  ["serves", "Also parts that surely serve"],
  ["may serve", "Also parts that may serve"],
]);

/** @type {Record<import("./buy_solver.js").Unmet["why"], string>} */
const WHY = {
  "nothing serves": "no part of this book that you accept serves there",
  "not to be had": "no part that serves there is in your price list or on your shelf",
  "too few left": "too few are left on your shelf, and none is in your price list",
};

/**
 * @param {SheetFrame} frame
 * @param {OwnJobs} jobs
 * @param {string} prices address of the page of prices
 */
export function buyView(frame, jobs, prices) {
  const accept = choiceView("Parts you accept", "rb-work-accept", ACCEPTS, (accept) =>
    jobs.choose({ ...jobs.job().choice, accept }),
  );
  const refresh = el("input", { type: "checkbox" });
  refresh.addEventListener("change", () => jobs.choose({ ...jobs.job().choice, refresh: refresh.checked }));
  const refreshWords = el("span", {});
  const refreshing = el("label", { class: "rb-work-tap" }, refresh, refreshWords);
  const said = el("p", { class: "rb-work-said", role: "status" });
  const answer = el("div", {});
  const link = el("a", { href: prices });
  return {
    element: el(
      "section",
      { "aria-label": "What to buy" },
      el("h3", {}, "What to buy"),
      accept.element,
      said,
      answer,
      refreshing,
      el("p", {}, link),
    ),
    /** @param {Job} job */
    show(job) {
      accept.show(job.choice.accept);
      const says = inShort(job);
      if (said.textContent !== says) said.textContent = says;
      fill(answer, ...inFull(frame, job, jobs.shop()));
      link.textContent = job.isStocked ? "Change prices and stock" : "Enter prices and stock";
      refreshing.hidden = !job.refreshable.length;
      refresh.checked = job.choice.refresh;
      refreshWords.textContent = refreshable(frame, job);
    },
  };
}

/** @param {Job} job */
function inShort({ judged, needs, plan, isStocked, isSettled, currency, lacking }) {
  if (judged.ends) return "Nothing is bought for a cracked frame.";
  if (!needs.length) return "No part is needed.";
  if (!isStocked) return "These parts are needed. What is cheapest to buy is worked out once your prices are entered.";
  if (!isSettled || !plan) return "Working out what is cheapest …";
  const { lines, price } = plan.cheapest;
  const repairs = lacking.length ? `${counted(lacking.length, "place")} cannot be repaired. ` : "";
  if (lines.length) {
    const cheapest = plan.proven ? "Cheapest purchase" : "Best purchase found, not proven cheapest";
    return `${repairs}${cheapest}: ${shown(price, currency)} in ${counted(plan.cheapest.purchases, "purchase")}.`;
  }
  return Object.keys(plan.cheapest.taken).length
    ? `${repairs}Nothing has to be bought: the shelf is enough.`
    : repairs.trim();
}

/**
 * @param {SheetFrame} frame
 * @param {Job} job
 * @param {Shop} shop
 * @returns {Child[]}
 */
function inFull(frame, job, shop) {
  const { plan, needs, isStocked } = job;
  if (job.judged.ends || !needs.length) return [];
  if (!isStocked) return [noParts(frame, job), needed(frame, job)];
  if (!plan) return [];
  const { cheapest, runnerUp } = plan;
  const naming = new Naming(frame, job, shop);
  return [
    shop.isExample && el("p", { class: "rb-note" }, "These prices are the invented example list, nobody's real ones."),
    noParts(frame, job),
    cheapest.lines.length > 0 && naming.table(cheapest),
    !plan.proven &&
      el(
        "p",
        { class: "rb-note" },
        `Not proven cheapest: the search was cut short. No purchase can cost less than ${naming.money(plan.bound)}.`,
      ),
    naming.pieces("From the shelf", cheapest.taken),
    substitutes(frame, job),
    naming.pieces("Left for the drawer", leftOf(job)),
    runnerUp && naming.next(runnerUp, cheapest.price, plan.runnerUpProven),
    cheapest.lines.length > 0 && !runnerUp && el("p", {}, "There is no other way to buy it from your list."),
  ];
}

/**
 * @param {SheetFrame} frame
 * @param {Job} job
 */
function needed(frame, { picked }) {
  /** @type {Map<string, number[]>} */
  const places = new Map();
  for (const { part, piece } of picked) if (part !== null) places.set(part, [...(places.get(part) ?? []), piece]);
  if (!places.size) return null;
  const items = [...places].map(([part, pieces]) =>
    el("li", {}, `${pieces.length} × ${frame.names[part] ?? part}, for ${whereOf(frame, pieces)}`),
  );
  return el("ul", {}, ...items);
}

/**
 * @param {SheetFrame} frame
 * @param {Job} job
 */
function noParts(frame, { lacking }) {
  if (!lacking.length) return null;
  const reasons = [...new Set(lacking.map(({ why }) => why))].map((why) => {
    const pieces = lacking.filter((each) => each.why === why).map(({ piece }) => piece);
    return el("p", {}, el("strong", {}, `Nothing repairs ${whereOf(frame, pieces)}`), `: ${WHY[why]}.`);
  });
  const advice = el("p", {}, "Do not string over a split or missing grommet.");
  return el("div", { class: "rb-caution", role: "note" }, ...reasons, advice);
}

/**
 * Which parts go where another part is fitted, with the word of their fit.
 * @param {SheetFrame} frame
 * @param {Job} job
 */
function substitutes(frame, { picks }) {
  const others = picks.filter(({ isSubstitute }) => isSubstitute);
  if (!others.length) return null;
  const items = others.map(({ holes, piece, name, says, part }) => {
    const { name: fitted, part: own, serves } = frame.pieces[piece];
    const verdict = frame.serves[serves].find((each) => each.part === part)?.verdict ?? "";
    const fit = [verdict, says].filter(Boolean).join(", ");
    return el(
      "li",
      {},
      `${holesWords(holes)}: ${name} instead of ${own === null ? "an unknown part" : fitted}${fit && `; it ${fit}`}`,
    );
  });
  return el("div", {}, el("h4", {}, "Other parts than those fitted"), el("ul", {}, ...items));
}

/**
 * What is left of the purchase once worn places are refreshed, if they are.
 * @param {Job} job
 */
function leftOf({ plan, picked, refreshable }) {
  const left = { ...plan?.cheapest.left };
  const refreshed = new Set(refreshable.map(({ piece }) => piece));
  for (const { piece, part } of picked) if (part !== null && refreshed.has(piece)) left[part] -= 1;
  return left;
}

/**
 * @param {SheetFrame} frame
 * @param {Job} job
 */
function refreshable(frame, job) {
  const pieces = job.refreshable.map(({ piece }) => piece);
  const places = counted(pieces.length, "worn place");
  return `Refresh ${places} with spare parts of the set, for labour alone: ${whereOf(frame, pieces)}`;
}
