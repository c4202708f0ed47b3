/** Whether a draft holds characters that nobody can see: they would be refused before anything else is read. */

import { hiddenCharacter, numberOf } from "./draft_text.js";
import { entries, isMapping } from "./draft_written.js";

/** @typedef {import("./draft_problem.js").Finding} Finding */
/** @typedef {import("./draft_written.js").Path} Path */

/** More tell nothing new. */
export const MOST_HIDDEN = 100;

/**
 * @param {any} draft
 * @param {Record<string, string>} names of such characters, by number
 * @returns {Finding[]}
 */
export function hiddenFindings(draft, names) {
  return findings(draft, [], names);
}

/**
 * @param {any} value
 * @param {Path} path
 * @param {Record<string, string>} names
 * @returns {Finding[]}
 */
function findings(value, path, names) {
  if (typeof value === "string") return inText(value, path, false, names);
  if (Array.isArray(value)) return value.flatMap((each, index) => findings(each, [...path, index], names));
  if (!isMapping(value)) return [];
  return entries(value).flatMap(([key, each]) => {
    const inner = [...path, key];
    return [...inText(key, inner, true, names), ...findings(each, inner, names)];
  });
}

/**
 * @param {string} text
 * @param {Path} path
 * @param {boolean} isKey
 * @param {Record<string, string>} names
 * @returns {Finding[]}
 */
function inText(text, path, isKey, names) {
  const hidden = hiddenCharacter(text);
  if (!hidden) return [];
  const number = numberOf(hidden);
  const name = names[number] ?? "control character";
  const message = `There is a character that nobody can see: U+${number} ${name}.`;
  return [{ rule: "readable", path, isKey, message, tip: "Delete it." }];
}
