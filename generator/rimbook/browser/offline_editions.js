/**
 * Which open page belongs to which edition of the site. A page that was opened of one edition gets everything
 * from it until it is closed, however many newer ones were kept meanwhile.
 */

import { Edition, FIRST_PIECE } from "./offline_edition.js";

/** @typedef {import("./offline_store.js").Store} Store */

export class Editions {
  /**
   * @param {Store} store
   * @param {() => Promise<string[]>} openPages the ids of all open pages
   */
  constructor(store, openPages) {
    this.store = store;
    this.openPages = openPages;
    /** @type {Promise<Edition[]> | null} */
    this.known = null;
    /** @type {Set<string>} pages that began to load and may not be counted as open yet */
    this.beginning = new Set();
  }

  /** The newest last. None before anything is kept. */
  all() {
    this.known ??= this.recall();
    return this.known;
  }

  /** @returns {Promise<Edition[]>} */
  async recall() {
    const found = [];
    try {
      for (const { version, clients } of (await this.store.state())?.editions ?? []) {
        const list = version ? await this.store.json([FIRST_PIECE, version, 0]) : null;
        if (list || !version) found.push(new Edition(version, list, clients));
      }
    } catch {
      return [];
    }
    return found.at(-1)?.version ? found : [];
  }

  /** The edition of which pages are opened now. */
  async current() {
    return (await this.all()).at(-1) ?? null;
  }

  /** The edition of an open page. @param {string} client */
  async of(client) {
    const editions = await this.all();
    return editions.find((edition) => edition.clients.includes(client)) ?? editions.at(-1) ?? null;
  }

  /** The pages of which there is a newer edition. */
  async behind() {
    return new Set((await this.all()).slice(0, -1).flatMap((edition) => edition.clients));
  }

  /** A page began to load. @param {string} client */
  begins(client) {
    this.beginning.add(client);
  }

  /** A page is newer than what is kept: it has everything from the network. @param {string} client */
  async passOver(client) {
    const editions = await this.all();
    let live = editions.find((edition) => !edition.version);
    if (!live) editions.unshift((live = new Edition("", null)));
    live.clients.push(client);
    await this.note();
  }

  /** From now on pages are opened of `next`. @param {Edition} next */
  async take(next) {
    const editions = await this.all();
    const taken = new Set(editions.flatMap((edition) => edition.clients));
    const open = new Set([...(await this.openPages()), ...this.beginning]);
    editions.at(-1)?.clients.push(...[...open].filter((client) => !taken.has(client)));
    this.beginning.clear();
    editions.push(next);
    await this.note();
  }

  /**
   * Editions of which no page is open any more go.
   * @returns {Promise<boolean>} whether any went
   */
  async drop() {
    const editions = await this.all();
    const open = new Set([...(await this.openPages()), ...this.beginning]);
    for (const edition of editions) edition.clients = edition.clients.filter((client) => open.has(client));
    const stay = editions.filter((edition, at) => edition.clients.length || at === editions.length - 1);
    const went = stay.length < editions.length;
    editions.splice(0, editions.length, ...stay);
    if (went) await this.note();
    return went;
  }

  async note() {
    const editions = (await this.all()).map(({ version, clients }) => ({ version, clients }));
    await this.store.note({ editions });
  }
}
