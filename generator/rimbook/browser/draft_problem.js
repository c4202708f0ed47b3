/** What can be wrong with a draft, and what the rules may know besides it. */

import { marks } from "./draft_marks.js";

/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */
/** @typedef {import("./draft_shape.js").Shape} Shape */
/** @typedef {"error" | "warning" | "note"} Severity */

/**
 * One thing that a rule does not like. `path` leads into the draft, to the key itself where `isKey` is set;
 * `severity` is given where it is another than the rule's own.
 * @typedef {object} Finding
 * @property {string} rule
 * @property {Path} path
 * @property {string} message
 * @property {boolean} [isKey]
 * @property {Severity} [severity]
 * @property {string | null} [hole]
 * @property {string | null} [found]
 * @property {string | null} [expected]
 * @property {string | null} [nearest]
 * @property {string | null} [tip]
 */

/**
 * The same with everything said, as `rimbook check` prints it.
 * @typedef {object} Problem
 * @property {string} rule
 * @property {Severity} severity
 * @property {Path} path
 * @property {boolean} isKey
 * @property {string} message
 * @property {string | null} hole
 * @property {string | null} found
 * @property {string | null} expected
 * @property {string | null} nearest
 * @property {string | null} tip
 */

/**
 * A part as far as rules ask: lengths in mm, null where nobody has measured.
 * @typedef {object} DraftPart
 * @property {string} name
 * @property {"single" | "wide" | "twin-even" | "twin-uneven" | "strip" | "set"} kind
 * @property {number | null} barrel
 * @property {number | null} bore
 * @property {number[] | null} length
 * @property {number | null} pitch
 * @property {number | null} posts
 */

/**
 * Another frame of the book.
 * @typedef {object} OtherFrame
 * @property {string} name
 * @property {string} maker
 * @property {string[]} aliases
 * @property {number | null} year
 * @property {string | null} variant_of
 */

/** @typedef {{most: number, rule: string}} Limit what is allowed, and by which rule */

/**
 * Every limit that the rules go by: lengths in mm, forces in N.
 * @typedef {object} Limits
 * @property {Record<string, Severity>} severities by rule
 * @property {Shape} shape of a map
 * @property {Record<string, string>} kinds of parts, in words
 * @property {Record<string, string>} hidden names of hidden characters by number
 * @property {Record<string, string>} look_alike small letters by those that look like them
 * @property {Record<string, string>} look_alike_capitals
 * @property {Record<string, [number, number][]>} scripts first and last numbers of their letters
 * @property {number} most_named words that may name holes under one key
 * @property {number} most_faults told of one draft at once
 * @property {number} longest_mm
 * @property {Record<string, Limit>} law by sport and what it limits
 * @property {Limit} throat_width
 * @property {Limit} length_with_throat
 * @property {number} rounding
 * @property {number} smallest_head_mm
 * @property {Record<string, number>} newton by unit
 * @property {Record<string, number>} doubtful_n by sport
 * @property {number} loose_mm
 * @property {number} tight_mm
 * @property {number} short_mm
 * @property {number} proud_mm
 * @property {number} most_of_rim
 * @property {Record<string, [number, number]>} gaps_mm by sport
 * @property {number} bend_mm
 * @property {number} give_mm
 * @property {number} give_derived_mm
 * @property {number} years_ahead
 * @property {number} days_ahead
 * @property {Record<string, number>} most_told by rule
 */

/**
 * @typedef {object} Given
 * @property {Record<string, DraftPart>} parts by id
 * @property {Record<string, OtherFrame>} frames of the book by slug; one that is corrected may be among them
 * @property {Limits} limits
 * @property {string} today as 2026-10-04
 * @property {string} [slug] of the draft, where it has one
 */

/**
 * All that was found, in the order in which a person mends it.
 * @param {readonly Finding[]} findings
 * @param {Draft} draft
 * @param {Limits} limits
 * @returns {Problem[]}
 */
export function inOrder(findings, draft, { severities, shape }) {
  const mark = marks(draft, shape);
  const marked = findings.map((finding) => ({
    at: mark(finding.path, finding.isKey),
    problem: whole(finding, severities[finding.rule] ?? "error"),
  }));
  const sorted = marked.sort(
    (one, other) =>
      one.at - other.at ||
      compared(one.problem.rule, other.problem.rule) ||
      compared(one.problem.message, other.problem.message),
  );
  return sorted.map(({ problem }) => problem);
}

/**
 * @param {Finding} finding
 * @param {Severity} severity
 * @returns {Problem}
 */
function whole(finding, severity) {
  const unsaid = { severity, isKey: false, hole: null, found: null, expected: null, nearest: null, tip: null };
  const said = Object.entries(finding).filter(([, value]) => value !== undefined);
  return /** @type {Problem} */ ({ ...unsaid, ...Object.fromEntries(said) });
}

/**
 * @param {string} one
 * @param {string} other
 */
function compared(one, other) {
  return one < other ? -1 : Number(one > other);
}
