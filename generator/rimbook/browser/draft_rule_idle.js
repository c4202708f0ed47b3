/** Whether every exception changes something: one that never applies is rather a slip. */

import { general, readNumber } from "./draft_number.js";
import { asText, shown, unquoted } from "./draft_text.js";
import { byAddress, fittedLines } from "./draft_where.js";
import { listed, runs } from "./draft_words.js";

/** @typedef {import("./draft_where.js").Line} Line */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {import("./draft_where.js").Settled} Settled */
/** @typedef {ReturnType<Rule>[number]} Told */

/** @type {Rule} */
export function noIdleLines(settled) {
  return [...idleLengths(settled, "bore_mm"), ...idleLengths(settled, "rim_depth_mm"), ...idleParts(settled)];
}

/**
 * @param {Settled} settled
 * @param {"bore_mm" | "rim_depth_mm"} name
 * @returns {Told[]}
 */
function idleLengths({ draft }, name) {
  const lines = draft[name];
  if (!(lines instanceof Map)) return [];
  return [...lines].flatMap(([key, holes]) => {
    const path = [name, key];
    if (key === "default") return [];
    if (isSame(key, lines.get("default"))) {
      const message = `${name} is ${key} by default; the exception ${shown(key)} changes nothing.`;
      return /** @type {Told} */ ({ path, message, isKey: true, severity: "warning" });
    }
    return holes.length ? [] : { path, message: `${name} ${shown(key)} names no holes.`, isKey: true };
  });
}

/**
 * @param {string} key
 * @param {unknown} usual
 */
function isSame(key, usual) {
  const [one, other] = [readNumber(key), readNumber(asText(usual))];
  return Number.isNaN(one) || Number.isNaN(other) ? key === asText(usual) : one === other;
}

/**
 * @param {Settled} settled
 * @returns {Told[]}
 */
function idleParts(settled) {
  const lines = fittedLines(settled);
  const usual = lines.find(({ key }) => key === "default");
  const holes = byAddress(settled.frame);
  return lines.flatMap((line) => {
    if (line === usual) return [];
    if (!line.named.length) return neverApplies(settled, line);
    if (!line.kept.length) {
      const isInStrip = line.named.every((at) => holes.get(at)?.strip !== null);
      const why = isInStrip ? "a strip covers these holes." : "other lines say what sits in these holes.";
      const message = `${shown(line.key)} never applies: ${why}`;
      return { path: line.path, message, hole: runs(line.named), isKey: true };
    }
    if (!usual || line.part !== usual.part || !onlyRepeats(line, lines)) return [];
    const message = `${shown(line.key)} changes nothing: ${unquoted(line.part ?? "unknown")} is the default.`;
    return /** @type {Told} */ ({ path: line.path, message, isKey: true, severity: "warning" });
  });
}

/**
 * @param {Settled} settled
 * @param {Line} line that names no drilled hole
 * @returns {Told}
 */
function neverApplies({ frame }, { key, path }) {
  const known = frame.holes.flatMap(({ bore }) => (bore === null ? [] : [bore]));
  const bores = [...new Set(known)].sort((a, b) => a - b);
  const isBore = key.startsWith("bore ") && bores.length > 0;
  const wanted = readNumber(key.slice("bore ".length));
  const away = (/** @type {number} */ bore) => Math.abs(bore - wanted);
  const near = bores.reduce((best, bore) => (away(bore) < away(best) ? bore : best), bores[0]);
  return {
    path,
    message: `${shown(key)} never applies: no such hole is drilled.`,
    isKey: true,
    expected: isBore ? `a bore of ${listed(bores.map(general))}` : null,
    nearest: isBore ? `bore ${general(near)}` : null,
  };
}

/**
 * Whether no line between the default and this one says otherwise about any of its holes.
 * @param {Line} line
 * @param {Line[]} lines
 */
function onlyRepeats(line, lines) {
  const before = lines.slice(0, lines.indexOf(line)).filter(({ key }) => key !== "default");
  return !before.some(({ named }) => named.some((at) => line.named.includes(at)));
}
