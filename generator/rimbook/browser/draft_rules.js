/**
 * What is wrong with a draft, in the words and in the order of `rimbook check`. The same rules as where the
 * site is built: `tests/cases/drafts.json` holds both to the same answers.
 */

import { MOST_HIDDEN, hiddenFindings } from "./draft_hidden.js";
import { inOrder } from "./draft_problem.js";
import { barrelInBore, barrelThroughRim } from "./draft_rule_barrel.js";
import { evenMains, passesAddUp } from "./draft_rule_counts.js";
import { holeGaps, placeOnRim, stringsRunStraight } from "./draft_rule_gaps.js";
import { stringsOnEachHalf } from "./draft_rule_halves.js";
import { stripHoles, stripPosts, twinHoles } from "./draft_rule_holes.js";
import { noIdleLines } from "./draft_rule_idle.js";
import { mixedScripts, sameName } from "./draft_rule_names.js";
import { placesIncrease, walkInOrder } from "./draft_rule_order.js";
import { partExists, partSuitsPlace } from "./draft_rule_parts.js";
import { noFutureDates, someoneElseConfirmed } from "./draft_rule_people.js";
import { twinPitch } from "./draft_rule_pitch.js";
import { sidesAgree } from "./draft_rule_sides.js";
import { frameWithinLaw, headLargeEnough, overallHoldsHead, tensionPlausible } from "./draft_rule_size.js";
import { strungWithinLaw } from "./draft_rule_strung.js";
import { tieOffCount, tieOffs } from "./draft_rule_ties.js";
import { variantOf } from "./draft_rule_variant.js";
import { shapeFindings } from "./draft_shape.js";
import { BUILT_OF, settle } from "./draft_settle.js";
import { written } from "./draft_written.js";

/** @typedef {import("./draft_problem.js").Finding} Finding */
/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_problem.js").Problem} Problem */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {import("./draft_where.js").Settled} Settled */
/** @typedef {import("./draft_written.js").Draft} Draft */

/** @type {Record<string, Rule>} those of the words */
const RULES = {
  "even-mains": evenMains,
  "passes-add-up": passesAddUp,
  "strings-on-each-half": stringsOnEachHalf,
  "walk-in-order": walkInOrder,
  "places-increase": placesIncrease,
  "head-large-enough": headLargeEnough,
  "overall-holds-head": overallHoldsHead,
  "frame-within-law": frameWithinLaw,
  "tie-offs": tieOffs,
  "tie-off-count": tieOffCount,
  "tension-plausible": tensionPlausible,
  "part-exists": partExists,
  "part-suits-place": partSuitsPlace,
  "no-idle-lines": noIdleLines,
  "twin-holes": twinHoles,
  "strip-holes": stripHoles,
  "strip-posts": stripPosts,
  "sides-agree": sidesAgree,
  "barrel-in-bore": barrelInBore,
  "barrel-through-rim": barrelThroughRim,
  "variant-of": variantOf,
  "someone-else-confirmed": someoneElseConfirmed,
};

/** @type {Record<string, Rule>} those of the geometry */
const PLACED_RULES = {
  "strung-within-law": strungWithinLaw,
  "place-on-rim": placeOnRim,
  "hole-gaps": holeGaps,
  "strings-run-straight": stringsRunStraight,
  "twin-pitch": twinPitch,
};

/** @type {Record<string, Rule>} those of the whole book */
const BOOK_RULES = { "same-name": sameName, "no-future-dates": noFutureDates, "mixed-scripts": mixedScripts };

/** A map with one of these faults cannot be placed; what geometry would say of it is only an echo. */
const UNPLACEABLE = ["even-mains", "passes-add-up", "strings-on-each-half", "walk-in-order", "head-large-enough"];

/** With measured places out of order, these would only say so again. */
const ECHOES = ["hole-gaps", "strings-run-straight", "twin-pitch"];
const ECHOED = ["places-increase", "place-on-rim"];

/**
 * @param {Draft} draft
 * @param {Given} given
 * @returns {Problem[]} in the order in which a person mends them
 */
export function problems(draft, given) {
  return judged(draft, given).problems;
}

/**
 * A draft's problems and the frame that it means, as far as that can be told: a frame can be drawn while its
 * name is still missing.
 * @param {Draft} given
 * @param {Given} known
 * @returns {{frame: DraftFrame | null, problems: Problem[]}}
 */
export function judged(given, known) {
  const { limits, parts } = known;
  const draft = written(given);
  const told = (/** @type {Finding[]} */ findings) => inOrder(findings, draft, limits);
  const hidden = hiddenFindings(draft, limits.hidden);
  const shape = shapeFindings(draft, limits.shape, limits.longest_mm);
  const isBuilt = !shape.some(({ path }) => BUILT_OF.includes(String(path[0])));
  const { frame, findings } = isBuilt ? settle(draft, parts, limits) : { frame: null, findings: [] };
  if (hidden.length) return { frame, problems: told(hidden).slice(0, MOST_HIDDEN) };
  if (shape.length) return { frame, problems: told(shape) };
  return { frame, problems: told(frame ? found({ draft, frame }, known) : findings) };
}

/**
 * @param {Settled} settled
 * @param {Given} given
 * @returns {Finding[]}
 */
function found(settled, given) {
  const ask = (/** @type {Record<string, Rule>} */ rules) =>
    Object.entries(rules).flatMap(([rule, check]) => check(settled, given).map((finding) => ({ rule, ...finding })));
  const worded = ask(RULES);
  const isPlaceable = !worded.some(({ rule }) => UNPLACEABLE.includes(rule));
  const all = isPlaceable ? [...worded, ...ask(PLACED_RULES)] : worded;
  const isEchoing = all.some(({ rule }) => ECHOED.includes(rule));
  return [...all.filter(({ rule }) => !isEchoing || !ECHOES.includes(rule)), ...ask(BOOK_RULES)];
}
