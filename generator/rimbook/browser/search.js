/** The search itself: what was asked, held against every frame and every other entry. */

import { hasHoles, sharedAt, takesPart, tests } from "./filters.js";
import { nearWords } from "./near.js";
import { fold } from "./words.js";

/** @typedef {import("./ask.js").Ask} Ask */
/** @typedef {import("./ask.js").Term} Term */
/** @typedef {import("./filters.js").Filters} Filters */
/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {import("./index_data.js").Entry} Entry */

/**
 * How well something matches. Smaller is better; equal ranks keep the order of the book.
 */
const WHOLE = 0;
const BEGINNING = 1;
const WORDS = 2;
const BEGINNINGS = 3;
const ELSEWHERE = 4;
const NOT = 5;

/**
 * @typedef {object} Found
 * @property {readonly (number | Entry)[]} hits best first; a number is a frame
 * @property {number} frames how many of the hits are frames
 * @property {readonly string[]} bent words that were taken for the one typed, where nothing had it
 */

/**
 * @param {Index} index
 * @param {Ask} ask
 * @param {Filters} filters
 * @returns {Found}
 */
export function search(index, ask, filters) {
  const found = exactly(index, ask, filters);
  if (found.hits.length || !ask.terms.length) return found;
  const { terms, bent } = bend(index, ask.terms);
  const near = bent.length ? exactly(index, { ...ask, terms }, filters) : found;
  return near.hits.length ? { ...near, bent } : found;
}

/**
 * @param {Index} index
 * @param {Ask} ask
 * @param {Filters} filters
 * @returns {Found}
 */
function exactly(index, ask, filters) {
  const wanted = tests(filters, index);
  if (ask.holes) wanted.push(hasHoles(index, ask.holes));
  if (ask.shared.length) wanted.push(sharedAt(index, ask.shared));
  const nothingToFind = !ask.blank && !ask.terms.length && !ask.holes && !ask.shared.length;
  /** @type {(number | Entry)[][]} */
  const ranks = [[], [], [], [], []];
  if (!nothingToFind) {
    const terms = ask.terms.filter((term) => !term.weak).map((term) => elsewhere(index, term));
    for (let frame = 0; frame < index.size; frame += 1) {
      if (wanted.every((test) => test(frame))) {
        ranks[rank(index.keys[frame] ?? "", ask.text, terms, frame)]?.push(frame);
      }
    }
  }
  const frames = ranks.reduce((sum, hits) => sum + hits.length, 0);
  if (ask.terms.length && !wanted.length) addEntries(index, ask, ranks);
  return { hits: ranks.flat(), frames, bent: [] };
}

/**
 * A term, and how to tell whether a frame has it anywhere but in its names.
 * @typedef {object} Sought
 * @property {readonly string[]} ways
 * @property {(frame: number) => boolean} elsewhere
 */

/**
 * @param {Index} index
 * @param {Term} term
 * @returns {Sought}
 */
function elsewhere(index, { ways }) {
  const { columns } = index;
  const sports = columns.sports.map((sport) => begins(` ${fold(sport)}`, ways));
  const makers = columns.makers.map((maker) => begins(` ${fold(maker)}`, ways));
  const patterns = columns.patterns.map((pattern) =>
    ways.some((way) => way.includes("x") && pattern.startsWith(way)),
  );
  const boreSets = index.boreSets.map((set) =>
    set.some((bore) => ways.some((way) => bore === way || (way.includes(".") && bore.startsWith(way)))),
  );
  const numbers = new Set(ways.filter((way) => /^\d{1,4}$/.test(way)).map(Number));
  const { parts } = index;
  const part = parts
    ? parts.entries.findIndex((entry) => ways.some((way) => entry.key.includes(`| ${way} |`)))
    : -1;
  const takes = part < 0 ? () => false : takesPart(index, parts?.ids[part] ?? "");
  return {
    ways,
    elsewhere: (frame) =>
      sports[columns.sport[frame] ?? -1] ||
      makers[columns.maker[frame] ?? -1] ||
      patterns[columns.pattern[frame] ?? -1] ||
      boreSets[columns.boreSet[frame] ?? -1] ||
      numbers.has(columns.holes[frame] ?? -1) ||
      numbers.has(columns.years[frame] || -1) ||
      takes(frame),
  };
}

/**
 * @param {string} key
 * @param {string} text
 * @param {readonly Sought[]} terms
 * @param {number} frame
 */
function rank(key, text, terms, frame) {
  if (!terms.length) return ELSEWHERE;
  let worst = WORDS;
  for (const term of terms) {
    if (term.ways.some((way) => key.includes(` ${way} `))) continue;
    if (begins(key, term.ways)) worst = Math.max(worst, BEGINNINGS);
    else if (term.elsewhere(frame)) worst = ELSEWHERE;
    else return NOT;
  }
  return worst < ELSEWHERE ? Math.min(worst, whole(key, text)) : worst;
}

/**
 * @param {Index} index
 * @param {Ask} ask
 * @param {(number | Entry)[][]} ranks
 */
function addEntries(index, ask, ranks) {
  const terms = ask.terms.filter((term) => !term.weak);
  for (const entry of [...index.entries, ...(index.parts?.entries ?? [])]) {
    const sought = terms.map((term) => ({
      ways: term.ways,
      elsewhere: () => begins(entry.lowKey, term.ways),
    }));
    const at = rank(entry.key, ask.text, sought, 0);
    ranks[at]?.push(entry);
  }
}

/**
 * @param {string} key
 * @param {string} text
 */
function whole(key, text) {
  if (key.includes(`| ${text} |`)) return WHOLE;
  return key.includes(`| ${text}`) ? BEGINNING : NOT;
}

/**
 * @param {string} key
 * @param {readonly string[]} ways
 */
function begins(key, ways) {
  return ways.some((way) => key.includes(` ${way}`));
}

/**
 * Terms that nothing in the book has, in the spellings nearest to them. `plover76` comes apart.
 * @param {Index} index
 * @param {readonly Term[]} terms
 */
function bend(index, terms) {
  const known = vocabulary(index);
  /** @type {string[]} */
  const bent = [];
  const nearer = terms.map((term) => {
    const typed = term.ways[0] ?? "";
    if (term.ways.length > 1 || isKnown(known, typed)) return term;
    const apart = typed.replace(/(\p{L})(?=\d)|(\d)(?=\p{L})/gu, "$1$2 ");
    const ways = apart === typed ? nearPhrases(typed, known) : [apart];
    bent.push(...ways);
    return ways.length ? { ...term, ways } : term;
  });
  return { terms: nearer, bent: [...new Set(bent)] };
}

/**
 * @param {string} phrase
 * @param {ReadonlySet<string>} known
 */
function nearPhrases(phrase, known) {
  const words = phrase.split(" ");
  if (words.length === 1) return nearWords(phrase, known);
  const near = words.map((word) => (isKnown(known, word) ? word : nearWords(word, known)[0]));
  return near.includes(undefined) ? [] : [near.join(" ")];
}

/**
 * @param {ReadonlySet<string>} known
 * @param {string} phrase
 */
function isKnown(known, phrase) {
  if (known.has(phrase)) return true;
  for (const word of known) if (word.startsWith(phrase)) return true;
  return false;
}

/** @type {WeakMap<Index, Set<string>>} */
const vocabularies = new WeakMap();

/** @param {Index} index */
function vocabulary(index) {
  let known = vocabularies.get(index);
  if (!known) {
    const entries = [...index.entries, ...(index.parts?.entries ?? [])];
    const texts = [
      ...index.keys,
      ...index.columns.makers.map(fold),
      ...index.columns.sports.map(fold),
      ...entries.flatMap((entry) => [entry.key, entry.lowKey]),
    ];
    known = new Set(texts.flatMap((text) => text.split(" ")));
    known.delete("|");
    known.delete("");
    vocabularies.set(index, known);
  }
  return known;
}
