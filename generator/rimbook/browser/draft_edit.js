/** Changes to the holes of a draft. Each gives a new draft; what is said of a hole stays with that hole. */

import { clockwise, placeOf, sideOf } from "./draft_address.js";
import { lengthsOf, shortForm } from "./draft_by_hole.js";
import { moved } from "./draft_move.js";
import { readPlace, writePlace } from "./draft_walk.js";
import { wordsOf } from "./draft_written.js";

/** @typedef {import("./draft_address.js").Side} Side */
/** @typedef {import("./draft_by_hole.js").Length} Length */
/** @typedef {import("./draft_by_hole.js").Lengths} Lengths */
/** @typedef {import("./draft_written.js").Draft} Draft */

/**
 * Which holes a change is for: one side, or the same number on both.
 * @typedef {"both" | Side} Which
 */

/**
 * @param {Draft} draft
 * @param {Which} which
 * @returns {string[]} the words of the walk, from the middle of the head
 */
export function wordsDown(draft, which) {
  return wordsOf(String((which === "L" && draft.left ? draft.left.walk : draft.walk) ?? ""));
}

/** @param {Draft} draft */
export function counts(draft) {
  return { R: wordsDown(draft, "R").length, L: wordsDown(draft, "L").length };
}

/**
 * @param {Which} which
 * @returns {Side[]}
 */
export function sidesOf(which) {
  return which === "both" ? ["R", "L"] : [which];
}

/**
 * The sides whose walk a change is for: both where they have one in common.
 * @param {Draft} draft
 * @param {Which} which
 * @returns {Which}
 */
export function walkOf(draft, which) {
  return draft.left ? which : "both";
}

/**
 * What passes at a place.
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @param {string} word
 * @returns {Draft}
 */
export function setWord(draft, which, number, word) {
  const words = wordsDown(draft, which);
  const before = words[number - 1];
  const next = withWords(draft, which, words.with(number - 1, word));
  // A hole that was not there has no bore that anybody measured.
  return before === "x" && word !== "x" ? setLengths(next, "bore_mm", sidesOf(walkOf(draft, which)).map((side) => `${side}${number}`), "unknown") : next;
}

/**
 * A new place, of unknown bore, before the one that has the number now.
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @param {string} word
 * @returns {Draft}
 */
export function insertPlace(draft, which, number, word) {
  const sides = sidesOf(walkOf(draft, which));
  const words = wordsDown(draft, which).toSpliced(number - 1, 0, word);
  const next = withWords(moved(draft, sides, number, 1), which, words);
  return setLengths(next, "bore_mm", sides.map((side) => `${side}${number}`), "unknown");
}

/**
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @returns {Draft} the same where it is the last one
 */
export function removePlace(draft, which, number) {
  const words = wordsDown(draft, which);
  if (words.length < 2) return draft;
  return withWords(moved(draft, sidesOf(walkOf(draft, which)), number, -1), which, words.toSpliced(number - 1, 1));
}

/**
 * A place and the next made one hole.
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @returns {Draft | string} or why not
 */
export function joinNext(draft, which, number) {
  const words = wordsDown(draft, which);
  const [here, next] = [readPlace(words[number - 1]), readPlace(words[number] ?? "")];
  if (typeof here === "string") return here;
  if (words[number] === undefined || typeof next === "string") return "There is no next hole to join with.";
  const passes = [...here.passes, ...next.passes].sort((a, b) => (a[0] < b[0] ? 1 : a[0] > b[0] ? -1 : 0));
  const word = writePlace({ passes, drilled: here.drilled || next.drilled });
  const read = readPlace(word);
  if (typeof read === "string") return read;
  return removePlace(setWord(draft, which, number, word), which, number + 1);
}

/**
 * A shared hole made two.
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @returns {Draft | string} or why not
 */
export function splitPlace(draft, which, number) {
  const words = wordsDown(draft, which);
  const passes = words[number - 1].split("+");
  if (passes.length !== 2) return "Only a hole with two strings can be split.";
  // On the way to the throat a main comes after the cross that it shared with.
  const main = passes.find((each) => each.startsWith("m"));
  const isSecond = words.slice(0, number - 1).some((word) => main !== undefined && word.split("+").includes(main));
  const [first, second] = isSecond ? [...passes].reverse() : passes;
  return setWord(insertPlace(draft, which, number + 1, second), which, number, first);
}

/**
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @returns {Draft | string} or why not
 */
export function swapNext(draft, which, number) {
  const words = wordsDown(draft, which);
  if (words[number] === undefined) return "There is no next hole to swap with.";
  return withWords(draft, which, words.with(number - 1, words[number]).with(number, words[number - 1]));
}

/**
 * @param {Draft} draft
 * @param {Lengths} name
 * @param {readonly string[]} holes
 * @param {Length} length
 * @returns {Draft}
 */
export function setLengths(draft, name, holes, length) {
  const lengths = lengthsOf(draft[name], clockwise(counts(draft)));
  for (const hole of holes) if (lengths.has(hole)) lengths.set(hole, length);
  return { ...draft, [name]: shortForm(lengths, (hole) => isDrilled(draft, hole)) };
}

/**
 * A measured place along the rim, of each side that shares the list.
 * @param {Draft} draft
 * @param {Which} which
 * @param {number} number
 * @param {Length} place
 * @returns {Draft}
 */
export function setPlace(draft, which, number, place) {
  const isLeft = which === "L" && draft.left;
  const owner = isLeft ? draft.left : draft;
  const written = owner.places_mm ?? [];
  const places = wordsDown(draft, which).map((_, index) => (index === number - 1 ? place : (written[index] ?? "unknown")));
  const { places_mm: _, ...rest } = owner;
  const next = places.some((each) => each !== "unknown") ? { ...rest, places_mm: places } : rest;
  return isLeft ? { ...draft, left: next } : next;
}

/**
 * @param {Draft} draft
 * @param {readonly string[]} holes all tied off, or none of them where all are
 * @returns {Draft}
 */
export function toggleTieOffs(draft, holes) {
  /** @type {string[]} */
  const now = draft.stringing?.tie_offs ?? [];
  const isAll = holes.every((hole) => now.includes(hole));
  const next = isAll ? now.filter((hole) => !holes.includes(hole)) : [...now, ...holes.filter((hole) => !now.includes(hole))];
  return { ...draft, stringing: { ...draft.stringing, tie_offs: next } };
}

/**
 * A left side of its own, at first like the right one; or none.
 * @param {Draft} draft
 * @param {boolean} differs
 * @returns {Draft}
 */
export function setLeft(draft, differs) {
  const { left: _, ...rest } = draft;
  if (!differs) return rest;
  return { ...rest, left: { walk: draft.walk, ...(draft.places_mm ? { places_mm: [...draft.places_mm] } : {}) } };
}

/**
 * @param {Draft} draft
 * @param {string} hole
 */
function isDrilled(draft, hole) {
  return wordsDown(draft, sideOf(hole))[placeOf(hole) - 1] !== "x";
}

/**
 * @param {Draft} draft
 * @param {Which} which
 * @param {readonly string[]} words
 * @returns {Draft}
 */
function withWords(draft, which, words) {
  const walk = words.join(" ");
  return which === "L" && draft.left ? { ...draft, left: { ...draft.left, walk } } : { ...draft, walk };
}
