/**
 * What restrings ask of a shelf in a year, place by place: restrings · share / places of the kind. The same as
 * `bench/shelf_demand.py`, from what the card of each frame says of its places.
 */

/** @typedef {import("./shelf_terms.js").Terms} Terms */

/** What there is to know of a part; of one that only lies in a named set, the name alone.
 * @typedef {object} Item
 * @property {string} name
 * @property {string} [kind] as in the catalogue
 * @property {number[]} [packs] sizes in which it is sold
 * @property {Record<string, number>} [contains] pieces by part, of a set
 */

/** Why nothing can be kept for a place. @typedef {"part unknown" | "bore unknown" | "not sold"} PlaceWhy */

/** Places of a frame with the same need and the same part.
 * @typedef {object} CardPlace
 * @property {string | null} part what the map names, where it does
 * @property {string | null} kind null where nobody knows the part
 * @property {number} pieces
 * @property {string} [holes] in words; only where it cannot be planned
 * @property {string[]} items ids of what may be kept for it, the best first
 * @property {PlaceWhy} [why] only where it cannot be planned
 */

/** The `shelf` of a frame's card. @typedef {{places: CardPlace[], items: Record<string, Item>}} CardShelf */

/** A frame of a shelf. `restrings` are a year, null where they are not known.
 * @typedef {{slug: string, name: string, restrings: number | null, shelf: CardShelf}} ShelfFrame
 */

/** Places of a frame that ask for so many pieces a year of what may be kept for them.
 * @typedef {object} Asked
 * @property {string} frame
 * @property {string} part
 * @property {string} kind
 * @property {number} pieces
 * @property {number} aYear
 * @property {readonly string[]} items the best first
 */

/** What cannot be planned of a frame, and why; without holes: all of it.
 * @typedef {object} Unplanned
 * @property {string} frame
 * @property {"restrings unknown" | PlaceWhy} why
 * @property {number} pieces
 * @property {string} holes in words
 * @property {string | null} part
 */

/**
 * All that is asked, in the order of the frames, and all that cannot be planned.
 * @param {readonly ShelfFrame[]} frames
 * @param {Terms} terms
 * @returns {{asked: Asked[], unplanned: Unplanned[]}}
 */
export function demand(frames, terms) {
  /** @type {Asked[]} */
  const asked = [];
  /** @type {Unplanned[]} */
  const unplanned = [];
  /** @type {Unplanned[]} */
  const unsold = [];
  for (const frame of frames) {
    if (frame.restrings === null) {
      unplanned.push({ frame: frame.slug, why: "restrings unknown", pieces: 0, holes: "", part: null });
      continue;
    }
    const ofKind = countKinds(frame.shelf.places);
    for (const { part, kind, pieces, holes, items, why } of frame.shelf.places) {
      if (why !== undefined) {
        const list = why === "not sold" ? unsold : unplanned;
        list.push({ frame: frame.slug, why, pieces, holes: holes ?? "", part });
      } else if (part !== null && kind !== null) {
        const share = terms.shares[kind] ?? 0;
        const aYear = (frame.restrings * share * pieces) / (ofKind.get(kind) ?? 0);
        asked.push({ frame: frame.slug, part, kind, pieces, aYear, items });
      }
    }
  }
  return { asked, unplanned: [...unplanned, ...unsold] };
}

/**
 * The pieces of each kind in a frame, also of those that cannot be planned.
 * @param {readonly CardPlace[]} places
 */
function countKinds(places) {
  /** @type {Map<string, number>} */
  const found = new Map();
  for (const { kind, pieces } of places) {
    if (kind !== null) found.set(kind, (found.get(kind) ?? 0) + pieces);
  }
  return found;
}
