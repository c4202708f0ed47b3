/** What the page of a shelf needs of the book: the names of its frames and parts, and the card of each frame. */

import { understand } from "./ask.js";
import { readCard } from "./board_sum.js";
import { NO_FILTERS } from "./filters.js";
import { unpackFrames, withParts } from "./index_data.js";
import { load } from "./registry.js";
import { search } from "./search.js";

/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {import("./shelf_demand.js").CardShelf} CardShelf */

/** What became of a card: `gone` where the book surely has no such frame.
 * @typedef {{name: string, path: string, shelf: CardShelf} | "gone" | "older" | "not loaded"} Card
 */

export class ShelfBook {
  /** @param {string} root the way from the page to the root of the site */
  constructor(root) {
    this.root = root;
    /** @type {Index | null} */
    this.index = null;
    /** @type {Map<string, number>} */
    this.frames = new Map();
    /** @type {Map<string, Card>} */
    this.cards = new Map();
  }

  /** Loads the list of frames, then that of parts. The page works without, as far as it can. */
  async open() {
    try {
      const index = unpackFrames(await load("finder", `${this.root}data/finder.js`));
      this.frames = new Map(index.names.map((_, frame) => [index.slug(frame), frame]));
      this.index = index;
      this.index = withParts(index, await load("finder-parts", `${this.root}data/finder-parts.js`));
    } catch {
      // Names of parts are then their ids, and no frame can be said to be gone.
    }
  }

  /**
   * @param {readonly string[]} slugs
   * @returns {Promise<void>} when the card of each is there, or it is known why not
   */
  async bring(slugs) {
    const wanted = slugs.filter((slug) => typeof (this.cards.get(slug) ?? "not loaded") === "string");
    await Promise.all(wanted.map(async (slug) => this.cards.set(slug, await this.card(slug))));
  }

  /**
   * @param {string} slug
   * @returns {Promise<Card>}
   */
  async card(slug) {
    if (this.index && !this.frames.has(slug)) return "gone";
    try {
      const card = readCard(await load(`frame:${slug}`, `${this.root}data/board/${slug}.js`));
      const shelf = /** @type {any} */ (card)?.shelf;
      const isRight = Array.isArray(shelf?.places) && typeof shelf.items === "object" && shelf.items !== null;
      return card && isRight ? { name: card.name, path: card.path, shelf } : "older";
    } catch {
      return "not loaded";
    }
  }

  /**
   * @param {string} slug
   * @returns {string} what the frame is called today, or nothing where that is not known
   */
  frameName(slug) {
    const frame = this.frames.get(slug);
    if (!this.index || frame === undefined) return "";
    const year = this.index.columns.years[frame];
    return `${this.index.names[frame]}${year ? ` (${year})` : ""}`;
  }

  /**
   * @param {string} slug
   * @returns {string} the address of its page, or nothing
   */
  framePage(slug) {
    const frame = this.frames.get(slug);
    return this.index && frame !== undefined ? this.root + this.index.path(frame) : "";
  }

  /** @param {string} part its name, or its id where the book does not know it */
  partName(part) {
    const parts = this.index?.parts;
    return parts?.entries[parts.number.get(part) ?? -1]?.title ?? part;
  }

  /**
   * @param {string} part
   * @returns {boolean} false only where it is sure that the book has no such part
   */
  hasPart(part) {
    return this.index?.parts?.number.has(part) ?? true;
  }

  /**
   * @param {string} typed
   * @param {number} most
   * @returns {string[]} slugs of the frames that it finds, the best first
   */
  find(typed, most) {
    const { index } = this;
    if (!index || !typed.trim()) return [];
    const { hits } = search(index, understand(typed, index.otherNames), NO_FILTERS);
    return hits.flatMap((hit) => (typeof hit === "number" ? [index.slug(hit)] : [])).slice(0, most);
  }

  /** @param {string} slug maker and sport of a frame, to tell it from others */
  about(slug) {
    const frame = this.frames.get(slug);
    if (!this.index || frame === undefined) return "";
    const { makers, maker, sports, sport } = this.index.columns;
    return [makers[maker[frame] ?? -1], sports[sport[frame] ?? -1]].filter(Boolean).join(", ");
  }
}
