/**
 * One edition of the site: the list of its files. The list comes in pieces in order of path
 * (`site/offline_list.py`); a piece is read when it is first needed.
 */

/**
 * Path, hash and size in bytes.
 * @typedef {[path: string, hash: string, size: number]} Listed
 */

/**
 * @typedef {object} FirstPiece
 * @property {1} format
 * @property {boolean} ask whether the book is so large that its reader is asked before all of it is kept
 * @property {number} files
 * @property {number} bytes
 * @property {Listed[]} core what every page needs
 * @property {[first: string, hash: string, size: number, files: number, bytes: number][]} pieces
 */

/**
 * Gives the bytes of a listed file as JSON, or null where it cannot be had now.
 * @typedef {(file: Listed) => Promise<any>} Reach
 */

export const FIRST_PIECE = "offline/list.json";

export class Edition {
  /**
   * @param {string} version the hash of the first piece; empty for pages that come straight from the network
   * @param {FirstPiece | null} list
   * @param {string[]} clients ids of the open pages that belong to it although there is a newer one
   */
  constructor(version, list, clients = []) {
    this.version = version;
    this.list = list;
    this.clients = clients;
    this.core = new Map((list?.core ?? []).map((file) => [file[0], file]));
    /** @type {Listed[]} */
    this.pieces = (list?.pieces ?? []).map(([, hash, size], at) => [`offline/list.${at}.json`, hash, size]);
    /** @type {Map<number, Listed[]>} */
    this.read = new Map();
  }

  /** The number of the piece in which a path stands, if it stands anywhere. @param {string} path */
  pieceOf(path) {
    const pieces = this.list?.pieces ?? [];
    let [low, high] = [0, pieces.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((pieces[middle]?.[0] ?? "") <= path) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }

  /**
   * @param {number} number
   * @param {Reach} reach
   * @returns {Promise<Listed[] | null>} null where the piece cannot be had
   */
  async piece(number, reach) {
    const known = this.read.get(number);
    if (known) return known;
    const file = this.pieces[number];
    const found = file ? await reach(file) : null;
    if (found) this.read.set(number, found);
    return found;
  }

  /**
   * @param {string} path
   * @param {Reach} reach
   * @returns {Promise<Listed | null | undefined>} null where there is no such file, undefined where nobody can say
   */
  async find(path, reach) {
    const core = this.core.get(path);
    const at = this.pieceOf(path);
    if (core || at < 0) return core ?? null;
    const piece = await this.piece(at, reach);
    return piece ? (piece.find((file) => file[0] === path) ?? null) : undefined;
  }

  /**
   * All files whose pieces can be reached.
   * @param {Reach} reach
   * @returns {Promise<Listed[]>}
   */
  async files(reach) {
    const found = [...this.core.values()];
    for (let number = 0; number < this.pieces.length; number += 1) {
      found.push(...((await this.piece(number, reach)) ?? []));
    }
    return found;
  }
}

/**
 * Pages first, then what they load, then data for programs, and last what is printed.
 * @param {readonly Listed[]} files
 */
export function inOrder(files) {
  const rank = (/** @type {Listed} */ [path]) => {
    if (path.endsWith(".html")) return 0;
    if (path.endsWith(".pdf")) return 3;
    return /\.(?:json|csv)$/.test(path) ? 2 : 1;
  };
  return files
    .map((file) => ({ file, rank: rank(file) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ file }) => file);
}
