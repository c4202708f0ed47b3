/** Whether a draft goes by a name of its own, and is a variant of a frame that there is. */

import { nearest, shown } from "./draft_text.js";

/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_problem.js").OtherFrame} OtherFrame */
/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

/** @type {Rule} */
export function variantOf({ draft, frame }, given) {
  const parent = draft.variant_of ?? null;
  const frames = others(given);
  const path = ["variant_of"];
  if (parent === null) return [];
  if (parent === given.slug) {
    return [{ path, message: `${parent} cannot be a variant of itself.`, tip: "Leave variant_of out." }];
  }
  const other = frames.get(parent);
  if (!other) {
    return [
      {
        path,
        message: `There is no map ${shown(parent)} to be a variant of.`,
        nearest: nearest(parent, frames.keys()),
        tip: "The name is that of the map's file, without .yaml.",
      },
    ];
  }
  const { look_alike: alike } = given.limits;
  if (folded(other.maker, alike) !== folded(frame.maker, alike)) {
    return [
      {
        path,
        message: `${parent} is made by ${shown(other.maker)}, not by ${shown(frame.maker)}.`,
        expected: `another frame by ${shown(frame.maker)}`,
      },
    ];
  }
  const way = ring(parent, frames, given.slug);
  if (!way.length) return [];
  const message = `These frames are variants of each other in a ring: ${way.join(", ")}.`;
  return [{ path, message, tip: "The oldest of them is a variant of none." }];
}

/**
 * The way from the draft back to itself, or nothing.
 * @param {string} parent
 * @param {Map<string, OtherFrame>} frames
 * @param {string | undefined} slug
 * @returns {string[]}
 */
function ring(parent, frames, slug) {
  if (!slug) return [];
  const way = [slug];
  /** @type {string | null} */
  let current = parent;
  while (current !== null && frames.has(current) && !way.includes(current)) {
    way.push(current);
    current = frames.get(current)?.variant_of ?? null;
  }
  return current === slug ? [...way, slug] : [];
}

/**
 * The draft is asked last: whatever name another frame has, it is the draft that must give way.
 * @type {Rule}
 */
export function sameName({ draft, frame }, given) {
  const { look_alike: alike } = given.limits;
  const names = /** @type {{path: (string | number)[], name: string}[]} */ ([
    { path: ["name"], name: frame.name },
    ...(draft.aliases ?? []).map((/** @type {string} */ name, /** @type {number} */ index) => ({
      path: ["aliases", index],
      name: name.trim(),
    })),
  ]);
  const taken = takenNames(given);
  /** @type {Set<string>} */
  const own = new Set();
  return names.flatMap(({ path, name }) => {
    const form = folded(name, alike);
    if (own.has(form)) {
      return /** @type {Told} */ ({ path, message: `${shown(frame.name)} goes by ${shown(name)} twice.`, severity: "note" });
    }
    own.add(form);
    const maker = folded(frame.maker, alike);
    const isApart = (/** @type {OtherFrame} */ other) =>
      maker === folded(other.maker, alike) && !!draft.year && !!other.year && draft.year !== other.year;
    const clash = (taken.get(form) ?? []).find(({ other }) => !isApart(other));
    if (!clash) return [];
    const { slug, other, name: itsName } = clash;
    const isSameMaker = maker === folded(other.maker, alike);
    return /** @type {Told} */ ({
      path,
      message: `${shown(name)} is already the name of ${slug}${name === itsName ? "." : `, written ${shown(itsName)}.`}`,
      severity: isSameMaker ? "error" : "warning",
      tip: isSameMaker
        ? "Two versions of one frame are told apart by their year."
        : `Both are found under it: ${slug} is by ${shown(other.maker)}.`,
    });
  });
}

/**
 * Who goes by what already, by the name's folded form. A name that clashes itself takes nothing.
 * @param {Given} given
 * @returns {Map<string, {slug: string, other: OtherFrame, name: string}[]>}
 */
function takenNames(given) {
  /** @type {Map<string, {slug: string, other: OtherFrame, name: string}[]>} */
  const taken = new Map();
  for (const [slug, other] of others(given)) {
    const forms = new Map([other.name, ...other.aliases].map((name) => [folded(name, given.limits.look_alike), name]));
    for (const name of [other.name, ...other.aliases].reverse()) forms.set(folded(name, given.limits.look_alike), name);
    for (const [form, name] of forms) taken.set(form, [...(taken.get(form) ?? []), { slug, other, name }]);
  }
  return taken;
}

/**
 * @param {Given} given
 * @returns {Map<string, OtherFrame>} by slug, without the map that the draft would correct
 */
function others({ frames, slug }) {
  return new Map(Object.entries(frames).filter(([each]) => each !== slug));
}

/**
 * A name without case, accents, spaces and signs, and with look-alike letters made one.
 * @param {string} name
 * @param {Record<string, string>} alike letters by those that look like them
 */
export function folded(name, alike) {
  const digits = /** @type {Record<string, string>} */ ({ O: "0", o: "0", I: "1", l: "1", "|": "1" });
  const plain = name
    .normalize("NFKD")
    // Beside digits alone, these letters are read as digits.
    .replace(/(?<![\p{L}\p{N}_])[\p{Nd}OoIl|]*\p{Nd}[\p{Nd}OoIl|]*(?![\p{L}\p{N}_])/gu, (number) =>
      number.replace(/[OoIl|]/g, (letter) => digits[letter]),
    );
  const small = [...plain].map((letter) => letter.toUpperCase().toLowerCase().replace("ß", "ss")).join("");
  return [...small.replaceAll("ς", "σ")]
    .map((letter) => alike[letter] ?? letter)
    .filter((letter) => /[\p{L}\p{N}]/u.test(letter))
    .join("");
}
