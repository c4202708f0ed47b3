/** Whether a draft goes by a name of its own, written in one script. */

import { folded, forms, mixedWord } from "./draft_names.js";
import { shown } from "./draft_text.js";
import { listed } from "./draft_words.js";

/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_problem.js").OtherFrame} OtherFrame */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {import("./draft_where.js").Settled} Settled */
/** @typedef {import("./draft_written.js").Path} Path */
/** @typedef {ReturnType<Rule>[number]} Told */

/**
 * The draft is asked last: whatever name another frame has, it is the draft that must give way.
 * @type {Rule}
 */
export function sameName(settled, given) {
  const { draft, frame } = settled;
  const maker = folded(frame.maker, given.limits.look_alike);
  const isSameMaker = (/** @type {OtherFrame} */ other) => maker === folded(other.maker, given.limits.look_alike);
  const isApart = (/** @type {OtherFrame} */ other) =>
    isSameMaker(other) && !!draft.year && !!other.year && draft.year !== other.year;
  const taken = takenNames(given);
  /** @type {Set<string>} */
  const own = new Set();
  return namesOf(settled).flatMap(({ path, name }) => {
    const all = [...forms(name, given.limits)];
    if (all.some((form) => own.has(form))) {
      const message = `${shown(frame.name)} goes by ${shown(name)} twice.`;
      return /** @type {Told} */ ({ path, message, severity: "note" });
    }
    for (const form of all) own.add(form);
    const same = all.flatMap((form) => taken.get(form) ?? []);
    const clash = same.find(({ slug, other }) => slug !== given.slug && !isApart(other));
    if (!clash) return [];
    const { slug, other, itsName } = clash;
    const asWritten = name === itsName ? "." : `, written ${shown(itsName)}.`;
    return /** @type {Told} */ ({
      path,
      message: `${shown(name)} is already the name of ${slug}${asWritten}`,
      severity: isSameMaker(other) ? "error" : "warning",
      tip: isSameMaker(other)
        ? "Two versions of one frame are told apart by their year."
        : `Both are found under it: ${slug} is by ${shown(other.maker)}.`,
    });
  });
}

/** @type {Rule} */
export function mixedScripts(settled, { limits }) {
  const maker = { path: ["maker"], name: settled.frame.maker };
  return [...namesOf(settled), maker].flatMap(({ path, name }) => {
    const mixed = mixedWord(name, limits.scripts);
    if (!mixed) return [];
    const message = `${shown(mixed.word)} has letters of several scripts: ${listed(mixed.scripts)}.`;
    return { path, message, tip: "Type the word anew in one script." };
  });
}

/**
 * @param {Settled} settled
 * @returns {{path: Path, name: string}[]} its name and its aliases
 */
function namesOf({ draft, frame }) {
  const aliases = /** @type {string[]} */ (draft.aliases ?? []);
  return [
    { path: ["name"], name: frame.name },
    ...aliases.map((name, index) => ({ path: ["aliases", index], name: name.trim() })),
  ];
}

/** @typedef {Map<string, {slug: string, other: OtherFrame, itsName: string}[]>} Taken names by every form */

/** @type {WeakMap<Given["frames"], Taken>} a large book has many names, and they stay while one types */
const known = new WeakMap();

/**
 * @param {Given} given
 * @returns {Taken}
 */
function takenNames({ frames, limits }) {
  const before = known.get(frames);
  if (before) return before;
  /** @type {Taken} */
  const taken = new Map();
  known.set(frames, taken);
  for (const [slug, other] of Object.entries(frames)) {
    /** @type {Set<string>} */
    const own = new Set();
    for (const itsName of [other.name, ...other.aliases]) {
      const all = [...forms(itsName, limits)];
      if (all.some((form) => own.has(form))) continue;
      for (const form of all) {
        own.add(form);
        taken.set(form, [...(taken.get(form) ?? []), { slug, other, itsName }]);
      }
    }
  }
  return taken;
}
