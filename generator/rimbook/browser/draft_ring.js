/** Values said for many holes at once: a default, and exceptions by address over it. */

import { address, clockwise, placeOf, selector, sideOf, span } from "./draft_address.js";
import { general, grouped, readNumber } from "./draft_number.js";
import { isMm } from "./draft_shape.js";
import { asText, nearest, shown, unquoted } from "./draft_text.js";

/** @typedef {import("./draft_address.js").Selector} Selector */
/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_problem.js").DraftPart} DraftPart */
/** @typedef {import("./draft_problem.js").Finding} Finding */
/** @typedef {import("./draft_problem.js").Limits} Limits */
/** @typedef {import("./draft_written.js").Path} Path */

/**
 * A two-post part and the two neighbouring holes it fills, clockwise.
 * @typedef {object} Twin
 * @property {string[]} holes
 * @property {string} part
 */

/** The places of one draft, and what its selectors mean there. What they get wrong is added to `findings`. */
export class Ring {
  /**
   * @param {Record<Side, number>} counts places of each side
   * @param {Pick<Limits, "longest_mm" | "most_named" | "most_faults">} limits
   */
  constructor(counts, limits) {
    this.counts = counts;
    this.limits = limits;
    this.all = clockwise(counts);
    /** @type {Finding[]} */
    this.findings = [];
  }

  /**
   * @param {Path} path
   * @param {string} message
   * @param {Partial<Finding>} [more]
   */
  complain(path, message, more) {
    if (this.findings.length < this.limits.most_faults) this.findings.push({ rule: "meaning", path, message, ...more });
  }

  /**
   * @param {number} count
   * @param {Path} path
   * @returns {boolean} whether more words name holes than are read
   */
  hasTooMany(count, path) {
    const { most_named: most } = this.limits;
    if (count <= most) return false;
    const message = `${grouped(count)} words name holes here; at most ${grouped(most)} are read.`;
    this.complain(path, message, { tip: "Name each hole once." });
    return true;
  }

  /**
   * @param {string} hole
   * @param {Path} path
   * @param {boolean} [isKey]
   * @returns {boolean} whether there is such a place
   */
  has(hole, path, isKey) {
    const side = sideOf(hole);
    const last = this.counts[side];
    if (placeOf(hole) <= last) return true;
    this.complain(path, `There is no hole ${hole}.`, { isKey, expected: `${side}1 to ${side}${last}` });
    return false;
  }

  /**
   * @param {Selector} found
   * @param {Path} path
   * @param {boolean} [isKey]
   * @returns {string[][]} one run a side, each clockwise
   */
  runs({ sides, first, last }, path, isKey) {
    return sides.flatMap((side) => {
      if (first > last) {
        const message = `${side}${first}-${side}${last} runs backwards.`;
        this.complain(path, message, { isKey, tip: "Put the smaller number first." });
        return [];
      }
      if (!this.has(`${side}${last}`, path, isKey)) return [];
      const run = Array.from({ length: last - first + 1 }, (_, index) => `${side}${first + index}`);
      return [side === "R" ? run : run.reverse()];
    });
  }

  /**
   * The one run from a hole clockwise to another, also over the middle.
   * @param {string} first
   * @param {string} last
   * @param {Path} path
   * @param {boolean} [isKey]
   * @returns {string[][]}
   */
  between(first, last, path, isKey) {
    if (!this.has(first, path, isKey) || !this.has(last, path, isKey)) return [];
    return [span(this.all, this.all.indexOf(first), this.all.indexOf(last))];
  }

  /**
   * Lengths by hole of a key such as `bore_mm`; a hole of unknown length is left out.
   * @param {string} name
   * @param {any} given a length, `unknown`, or lines
   * @returns {Map<string, number>}
   */
  lengths(name, given) {
    /** @type {Map<string, any>} */
    const lines = given instanceof Map ? given : new Map([["default", given]]);
    if (!lines.has("default")) {
      this.complain([name], `${name} has exceptions but no default.`, { tip: "Add default: unknown." });
    }
    const usual = this.#length(name, "default", lines.get("default") ?? (lines.has("default") ? null : "unknown"));
    /** @type {Map<string, number | null>} */
    const values = new Map(this.all.map((hole) => [hole, usual]));
    const count = [...lines.values()].reduce((sum, each) => sum + (Array.isArray(each) ? each.length : 0), 0);
    if (this.hasTooMany(count, [name])) return new Map();
    for (const [word, holes] of lines) {
      if (word === "default") continue;
      const named = this.#listed([name, word], holes);
      const length = this.#length(name, word, word);
      for (const hole of named) values.set(hole, length);
    }
    return new Map([...values].flatMap(([hole, value]) => (value === null ? [] : [[hole, value]])));
  }

  /**
   * @param {string} name
   * @param {string} key
   * @param {unknown} word
   * @returns {number | null}
   */
  #length(name, key, word) {
    if (word === "unknown") return null;
    const length = readNumber(asText(word));
    if (isMm(length, this.limits.longest_mm)) return length;
    this.complain([name, key], `${name} cannot be ${shown(word)}.`, {
      isKey: true,
      expected: "a length in mm, unknown or default",
      nearest: nearest(asText(word), ["default", "unknown"]),
    });
    return null;
  }

  /**
   * @param {Path} path
   * @param {unknown} holes
   * @returns {string[]}
   */
  #listed(path, holes) {
    if (!Array.isArray(holes)) {
      const isSwapped = isMm(holes, this.limits.longest_mm) && selector(path[path.length - 1]);
      const tip = isSwapped ? `The size comes first: ${unquoted(holes)}: [${path[path.length - 1]}].` : null;
      this.complain(path, "The holes must be a list.", { expected: "[9, 13, R31]", tip });
      return [];
    }
    return holes.flatMap((word, index) => {
      const chosen = selector(word);
      if (chosen) return this.runs(chosen, [...path, index]).flat();
      this.complain([...path, index], `${shown(word)} names no hole.`, { expected: "9, R9, 9-13 or R9-R13" });
      return [];
    });
  }
}

/**
 * What sits in each hole, and which holes share a two-post part. The default gives way to `bore 2.7`, and
 * that to holes; the later line wins.
 * @param {Ring} ring
 * @param {Map<string, string>} lines
 * @param {Map<string, number>} bores
 * @param {Record<string, DraftPart>} catalogue
 * @returns {{parts: Map<string, string | null>, twins: Twin[]}}
 */
export function fitted(ring, lines, bores, catalogue) {
  const known = (/** @type {string | undefined} */ part) => (part === undefined || part === "unknown" ? null : part);
  /** @type {Map<string, string | null>} */
  const parts = new Map(ring.all.map((hole) => [hole, known(lines.get("default"))]));
  /** @type {[string | null, string[]][]} */
  const runs = [];
  if (ring.hasTooMany(lines.size, ["fitted"])) return { parts, twins: [] };
  for (const [key, part] of lines) {
    if (key.startsWith("bore ")) {
      const bore = boreOf(ring, key);
      for (const hole of ring.all) if (bore !== null && bores.get(hole) === bore) parts.set(hole, known(part));
    } else if (key !== "default") {
      for (const run of runsOf(ring, key, bores)) runs.push([known(part), run]);
    }
  }
  for (const [part, run] of runs) for (const hole of run) parts.set(hole, part);
  return { parts, twins: twinsOf(ring, parts, runs, catalogue) };
}

/**
 * @param {Ring} ring
 * @param {string} key
 * @returns {number | null}
 */
function boreOf(ring, key) {
  const bore = readNumber(key.slice("bore ".length));
  if (isMm(bore, ring.limits.longest_mm)) return bore;
  ring.complain(["fitted", key], `${shown(key)} names no bore.`, { isKey: true, expected: "bore 2.7" });
  return null;
}

/**
 * @param {Ring} ring
 * @param {string} key
 * @param {Map<string, number>} bores
 * @returns {string[][]}
 */
function runsOf(ring, key, bores) {
  const path = ["fitted", key];
  const ends = key.split("-").map(address);
  const [first, last] = ends;
  if (ends.length === 2 && first && last && first[0] !== last[0]) return ring.between(first, last, path, true);
  const chosen = selector(key);
  if (chosen) return ring.runs(chosen, path, true);
  const sizes = [...new Set(bores.values())].sort((a, b) => a - b);
  ring.complain(path, `${shown(key)} names no holes.`, {
    isKey: true,
    expected: "default, bore 2.7, a hole as R9 or 9, or a run as R9-R13",
    nearest: nearest(key, ["default", ...sizes.map((bore) => `bore ${general(bore)}`)]),
  });
  return [];
}

/**
 * Two-post parts, paired hole by hole along the run that names them.
 * @param {Ring} ring
 * @param {Map<string, string | null>} parts
 * @param {[string | null, string[]][]} runs
 * @param {Record<string, DraftPart>} catalogue
 * @returns {Twin[]}
 */
function twinsOf(ring, parts, runs, catalogue) {
  /** @type {Map<string, Twin>} */
  const twins = new Map();
  for (const [part, run] of runs) {
    if (part === null || !Object.hasOwn(catalogue, part) || !catalogue[part].kind.startsWith("twin-")) continue;
    for (let at = 0; at + 1 < run.length; at += 2) twins.set(run[at], { holes: [run[at], run[at + 1]], part });
  }
  const order = new Map(ring.all.map((hole, index) => [hole, index]));
  const place = (/** @type {Twin} */ { holes }) => order.get(holes[0]) ?? 0;
  return [...twins.values()]
    .filter(({ holes, part }) => holes.every((hole) => parts.get(hole) === part))
    .sort((one, other) => place(one) - place(other));
}
