/**
 * Keeps a site for offline use: looks whether there is a new edition, fetches what is missing beside what is
 * kept, and takes the new one when it can do all that the old one could. It may be stopped at any moment;
 * what was fetched stays, and the next round goes on from there.
 */

import { Edition, FIRST_PIECE, inOrder } from "./offline_edition.js";
import { Editions } from "./offline_editions.js";
import { fetchListed, fetchWhole } from "./offline_fetch.js";
import { NOTHING_KEPT, Stop } from "./offline_kept.js";
import { addressOf } from "./offline_paths.js";
import { Store, hashOf } from "./offline_store.js";

/** @typedef {import("./offline_edition.js").Listed} Listed */

/** @typedef {import("./offline_fetch.js").Got} Got */

/** @typedef {import("./offline_kept.js").Kept} Kept */

/** @typedef {import("./offline_kept.js").Trouble} Trouble */

/**
 * What a page wants: everything (null leaves it to the size of the book), itself, a look at the server now.
 * @typedef {{ whole?: boolean | null, page?: string | null, look?: boolean }} Wish
 */

const AT_ONCE = 4;
const LOOK_AGAIN_MS = 30_000;
const MOST_RESTARTS = 3;

export class Keeper {
  /**
   * @param {string} scope
   * @param {(kept: Kept) => void} tell
   * @param {() => Promise<string[]>} openPages the ids of all open pages
   */
  constructor(scope, tell, openPages) {
    this.scope = scope;
    this.tell = tell;
    this.openPages = openPages;
    this.reset();
  }

  reset() {
    this.store = new Store(this.scope);
    this.editions = new Editions(this.store, this.openPages);
    /** @type {Wish} */
    this.wish = {};
    /** @type {Promise<void> | null} */
    this.round = null;
    this.again = false;
    this.looked = -Infinity;
    /** Whether the server is known to change what it sends, so that hashes say nothing. */
    this.alters = false;
    /** @type {Kept} */
    this.kept = { ...NOTHING_KEPT };
  }

  /** Do what is wished, now or after what is going on. @param {Wish} wish */
  ask(wish) {
    this.wish = { ...this.wish, ...wish, look: Boolean(wish.look || this.wish.look) };
    this.again = true;
    this.round ??= this.rounds();
    return this.round;
  }

  async rounds() {
    const { store } = this;
    let restarts = 0;
    while (this.again) {
      this.again = false;
      this.kept = { ...this.kept, busy: true, trouble: "" };
      /** @type {Trouble | "stale"} */
      let why = "";
      try {
        await this.once();
      } catch (error) {
        why = error instanceof Stop ? error.why : "refused";
      }
      if (this.store !== store) return;
      if (why === "stale" && restarts < MOST_RESTARTS) {
        restarts += 1;
        this.wish.look = true;
        this.again = true;
      } else if (why) this.kept.trouble = why === "stale" ? "missing" : why;
      this.kept.busy = this.again;
      this.tell(this.kept);
    }
    this.round = null;
  }

  async once() {
    await this.store.open();
    const before = await this.editions.current();
    if (!before || this.wish.look || performance.now() - this.looked > LOOK_AGAIN_MS) {
      this.wish.look = false;
      await this.lookForNewer(before);
    }
    const edition = await this.editions.current();
    if (!edition?.list) return;
    this.kept.whole = this.wish.whole ?? !edition.list.ask;
    await this.countAll(edition);
    this.tell(this.kept);
    const page = this.wish.page ? await edition.find(this.wish.page, this.reach) : null;
    if (page) await this.fetchAll([page], edition);
    if (this.kept.whole) {
      for (let number = 0; number < edition.pieces.length; number += 1) await this.needPiece(edition, number);
      await this.fetchAll(inOrder(await edition.files(this.reach)), edition);
    }
    if (await this.editions.drop()) await this.sweep();
  }

  /** @param {Edition | null} current */
  async lookForNewer(current) {
    const { got, miss } = await fetchWhole(addressOf(FIRST_PIECE, this.scope));
    if (!got) throw new Stop(miss === "gone" ? "nothing" : "away");
    const version = await hashOf(got.bytes);
    this.looked = performance.now();
    if (version === current?.version) return;
    this.alters = false;
    const next = new Edition(version, JSON.parse(new TextDecoder().decode(got.bytes)));
    await this.fetchAll(await this.keptSoFar(current, next), next);
    await this.put([FIRST_PIECE, version, got.bytes.byteLength], got);
    await this.editions.take(next);
  }

  /**
   * What a new edition has to have before it takes over: what every page needs, and what is kept of the old one.
   * @param {Edition | null} current
   * @param {Edition} next
   */
  async keptSoFar(current, next) {
    const wanted = [...next.core.values()];
    if (!current) return wanted;
    const paths = new Set();
    for (const file of await current.files(this.stored)) {
      if (await this.store.has(file)) paths.add(file[0]);
    }
    const numbers = new Set([...paths].map((path) => next.pieceOf(path)).filter((at) => at >= 0));
    for (const number of numbers) {
      wanted.push(...(await this.needPiece(next, number)).filter(([path]) => paths.has(path)));
    }
    return wanted;
  }

  /** A piece of a list, as far as it is kept. @param {Listed} file */
  stored = (file) => this.store.json(file);

  /** A piece of a list, from what is kept or else from the server. @param {Listed} file */
  reach = async (file) => {
    const kept = await this.store.json(file);
    if (kept) return kept;
    const { got, miss } = await fetchListed(file, this.scope);
    if (!got || miss) return null;
    await this.put(file, got).catch(() => undefined);
    return JSON.parse(new TextDecoder().decode(got.bytes));
  };

  /**
   * @param {Edition} edition
   * @param {number} number
   */
  async needPiece(edition, number) {
    const piece = await edition.piece(number, this.reach);
    if (!piece) throw new Stop(await this.whyNot(edition));
    return piece;
  }

  /**
   * Why a file could not be had: no network, a newer edition on the server, or it is missing there.
   * @param {Edition} edition
   */
  async whyNot(edition) {
    const { got } = await fetchWhole(addressOf(FIRST_PIECE, this.scope));
    if (!got) return "away";
    return (await hashOf(got.bytes)) === edition.version ? "missing" : "stale";
  }

  /**
   * Fetches what is not kept yet, a few at a time.
   * @param {readonly Listed[]} files
   * @param {Edition} edition
   */
  async fetchAll(files, edition) {
    const { store } = this;
    const missing = [];
    for (const file of files) if (!(await store.has(file))) missing.push(file);
    let at = 0;
    const work = async () => {
      for (let file = missing[at++]; file; file = missing[at++]) {
        const got = await this.obtain(file, edition);
        if (this.store !== store) throw new Stop("");
        if (got) await this.put(file, got);
        if (edition === (await this.editions.current())) this.count(file);
        this.tell(this.kept);
      }
    };
    try {
      await Promise.all(Array.from({ length: AT_ONCE }, work));
    } finally {
      at = missing.length;
    }
  }

  /**
   * What the server sends of a file; null where it has none. Where that is not what the list says and the list
   * is still the same, the server changes files on their way, and they are taken as they come.
   * @param {Listed} file
   * @param {Edition} edition
   */
  async obtain(file, edition) {
    const { got, miss } = await fetchListed(file, this.scope);
    if (!miss || (miss === "other" && this.alters)) return got;
    const why = miss === "away" ? miss : await this.whyNot(edition);
    if (why !== "missing") throw new Stop(why);
    if (miss === "other") this.alters = true;
    else this.kept.trouble = "missing";
    return got;
  }

  /**
   * @param {Listed} file
   * @param {Got} got
   */
  async put(file, got) {
    try {
      await this.store.put(file, got.bytes, got.type);
    } catch (error) {
      const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
      throw new Stop(isFull ? "full" : "refused");
    }
  }

  /**
   * Keeps what a reader has opened.
   * @param {Listed} file
   * @param {Got} got
   */
  async putOpened(file, got) {
    if (await this.store.has(file)) return;
    try {
      await this.put(file, got);
      this.count(file);
    } catch (error) {
      if (error instanceof Stop) this.kept.trouble = /** @type {Trouble} */ (error.why);
    }
    this.tell(this.kept);
  }

  /** @param {Edition} edition */
  async countAll(edition) {
    const { list } = edition;
    if (!list) return;
    Object.assign(this.kept, {
      files: 0,
      bytes: 0,
      allFiles: list.files,
      allBytes: list.bytes,
      ask: list.ask,
    });
    for (const file of await edition.files(this.stored)) if (await this.store.has(file)) this.count(file);
  }

  /** @param {Listed} file */
  count([, , size]) {
    this.kept.files += 1;
    this.kept.bytes += size;
  }

  /** What no edition has any more goes. */
  async sweep() {
    /** @type {Listed[]} */
    const stay = [];
    for (const edition of await this.editions.all()) {
      if (!edition.version) continue;
      stay.push([FIRST_PIECE, edition.version, 0], ...edition.pieces);
      stay.push(...(await edition.files(this.stored)));
    }
    await this.store.keepOnly(stay);
  }

  async forget() {
    const { store } = this;
    this.reset();
    await store.forget();
  }
}
