/**
 * The finder's index, unpacked. The columns come from the build, written as small as gzip makes
 * them: each kind of value once in a list, and for each frame its number in the list. A set of numbers
 * is written as steps from one to the next, and a frame's set as 0 for the next new one, else as how
 * many new ones back it is.
 */

import { fold, key } from "./words.js";

const FORMAT = 1;

/**
 * @typedef {object} PackedFrames
 * @property {number} format
 * @property {string} stamp the same in both files of one build
 * @property {string} path the page of a frame, with `*` for its slug
 * @property {string} names one a line
 * @property {string} slugs one a line, empty where the name gives it
 * @property {string} aliases one frame a line, tabs between them
 * @property {number[]} years 0 for none
 * @property {string[]} sports
 * @property {number[]} sport
 * @property {string[]} makers
 * @property {number[]} maker
 * @property {string[]} patterns mains x crosses
 * @property {number[]} pattern
 * @property {number[]} holes
 * @property {string[]} bores
 * @property {number[][]} boreSets of numbers in `bores`
 * @property {number[]} boreSet
 * @property {number[][]} sharedSets places on the walk
 * @property {number[]} sharedSet
 * @property {[string, string, string, string[], string][]} places kind, title, path, other names, note
 * @property {Record<string, string>} moved old slug → slug
 */

/**
 * @typedef {object} PackedParts
 * @property {number} format
 * @property {string} stamp
 * @property {string} path the page of a part, with `*` for its id
 * @property {string} ids one a line
 * @property {string} names one a line, empty where the id gives it
 * @property {string[]} kinds
 * @property {number[]} kind
 * @property {string[]} makers the first is empty
 * @property {number[]} maker
 * @property {number[][]} partSets
 * @property {number[]} partSet
 * @property {Record<string, string>} moved old id → id
 */

/**
 * Anything that is found and is no frame.
 * @typedef {object} Entry
 * @property {string} kind
 * @property {string} title
 * @property {string} path
 * @property {string} note
 * @property {string} key
 * @property {string} lowKey words that match, but rank low
 */

/**
 * @typedef {object} Parts
 * @property {readonly string[]} ids
 * @property {readonly Entry[]} entries
 * @property {ReadonlyMap<string, number>} number of an id, or of one that a part had before
 * @property {readonly (readonly number[])[]} sets
 * @property {readonly number[]} setOf
 */

/**
 * @typedef {object} Index
 * @property {number} size
 * @property {string} stamp
 * @property {readonly string[]} names
 * @property {readonly string[]} keys
 * @property {(frame: number) => string} slug
 * @property {(frame: number) => string} path
 * @property {PackedFrames} columns
 * @property {readonly (readonly string[])[]} boreSets
 * @property {readonly Entry[]} entries
 * @property {ReadonlyMap<string, readonly string[]>} otherNames another name for a thing → its words in this book, folded
 * @property {Parts | null} parts
 */

/**
 * @param {unknown} value as the data file handed it over
 * @returns {Index} Throws where the file is of another format.
 */
export function unpackFrames(value) {
  const packed = /** @type {PackedFrames} */ (value);
  if (packed?.format !== FORMAT) throw new Error("The list of frames is of another edition.");
  const columns = {
    ...packed,
    boreSets: packed.boreSets.map(summed),
    boreSet: numbered(packed.boreSet),
    sharedSets: packed.sharedSets.map(summed),
    sharedSet: numbered(packed.sharedSet),
  };
  const names = lines(columns.names);
  const slugs = lines(columns.slugs);
  const aliases = lines(columns.aliases);
  /** @param {number} frame */
  const slug = (frame) => slugs[frame] || slugOf(names[frame] ?? "");
  const oldSlugs = oldNames(columns.moved);
  /** @type {Map<string, string[]>} */
  const otherNames = new Map();
  for (const [kind, title, , also] of columns.places) {
    for (const name of kind === "word" ? also.map(fold) : []) {
      otherNames.set(name, [...(otherNames.get(name) ?? []), fold(title)]);
    }
  }
  return {
    size: names.length,
    stamp: columns.stamp,
    names,
    keys: names.map((name, frame) => {
      const old = oldSlugs.size ? (oldSlugs.get(slug(frame)) ?? []) : [];
      return key([name, ...(aliases[frame] ?? "").split("\t"), slugs[frame] ?? "", ...old]);
    }),
    slug,
    path: (frame) => columns.path.replace("*", slug(frame)),
    columns,
    boreSets: columns.boreSets.map((set) => set.map((bore) => columns.bores[bore] ?? "")),
    entries: columns.places.map(([kind, title, path, also, note]) => ({
      kind,
      title,
      path,
      note,
      key: key([title, ...also]),
      lowKey: key([kind, note]),
    })),
    otherNames,
    parts: null,
  };
}

/**
 * The index with its second file, which knows the parts.
 * @param {Index} index
 * @param {unknown} value
 * @returns {Index} Throws where the two files are not of one build.
 */
export function withParts(index, value) {
  const packed = /** @type {PackedParts} */ (value);
  if (packed?.format !== FORMAT || packed.stamp !== index.stamp) {
    throw new Error("The list of parts is of another edition.");
  }
  const ids = lines(packed.ids);
  const names = lines(packed.names);
  const oldIds = oldNames(packed.moved);
  const number = new Map(ids.map((id, part) => [id, part]));
  for (const [old, id] of Object.entries(packed.moved)) number.set(old, number.get(id) ?? -1);
  const entries = ids.map((id, part) => {
    const title = names[part] || nameOf(id);
    const kind = packed.kinds[packed.kind[part] ?? 0] ?? "";
    const maker = packed.makers[packed.maker[part] ?? 0] ?? "";
    return {
      kind: "part",
      title,
      path: packed.path.replace("*", id),
      note: [id, kind, maker].filter(Boolean).join(", "),
      key: key([id, title, ...(oldIds.get(id) ?? [])]),
      lowKey: key([kind, maker]),
    };
  });
  const parts = {
    ids,
    entries,
    number,
    sets: packed.partSets.map(summed),
    setOf: numbered(packed.partSet),
  };
  return { ...index, parts };
}

/**
 * The slug that a plain name has by itself; the build leaves such slugs out.
 * @param {string} name
 */
export function slugOf(name) {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}

/**
 * The name that an id has by itself.
 * @param {string} id
 */
export function nameOf(id) {
  const words = id.replaceAll("-", " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/**
 * @param {Record<string, string>} moved old name → name of today
 * @returns {Map<string, string[]>} the old names of a name
 */
function oldNames(moved) {
  /** @type {Map<string, string[]>} */
  const found = new Map();
  for (const [old, name] of Object.entries(moved)) found.set(name, [...(found.get(name) ?? []), old]);
  return found;
}

/** @param {string} text */
function lines(text) {
  return text === "" ? [] : text.slice(0, -1).split("\n");
}

/** @param {readonly number[]} steps */
function summed(steps) {
  let sum = 0;
  return steps.map((step) => (sum += step));
}

/** @param {readonly number[]} column */
function numbered(column) {
  let known = 0;
  return column.map((back) => (back ? known - back : known++));
}
