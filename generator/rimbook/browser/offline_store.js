/**
 * What a worker keeps, by content: the name of an entry is the hash of its bytes. What two editions of the
 * site have in common is there once, and what is there is never fetched again.
 */

/** @typedef {import("./offline_edition.js").Listed} Listed */

const NAME = "rimbook 1 ";

/** @param {BufferSource} bytes the first 72 bits of SHA-256, as the list of files has them */
export async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)).subarray(0, 9);
  return btoa(String.fromCharCode(...digest))
    .replaceAll("+", "-")
    .replaceAll("/", "_");
}

export class Store {
  /** @param {string} scope */
  constructor(scope) {
    this.scope = scope;
    /** @type {Promise<{ cache: Cache, names: Set<string> }> | null} */
    this.opened = null;
  }

  /** Opens what is kept. Rejects where the browser keeps nothing. */
  async open() {
    this.opened ??= this.read();
    try {
      return await this.opened;
    } catch (error) {
      this.opened = null;
      throw error;
    }
  }

  async read() {
    const cache = await caches.open(NAME + this.scope);
    const names = new Set((await cache.keys()).map((request) => request.url));
    return { cache, names };
  }

  /**
   * @param {string} hash
   * @param {string} path
   */
  name(hash, path) {
    const ending = /\.[A-Za-z0-9]+$/.exec(path);
    return `${this.scope}offline/kept/${hash}${ending ? ending[0] : ""}`;
  }

  /** @param {Listed} file */
  async has([path, hash]) {
    return (await this.open()).names.has(this.name(hash, path));
  }

  /** @param {Listed} file */
  async get([path, hash]) {
    const { cache, names } = await this.open();
    const name = this.name(hash, path);
    const found = names.has(name) ? await cache.match(name) : undefined;
    if (!found) names.delete(name);
    return found;
  }

  /**
   * @param {Listed} file
   * @param {ArrayBuffer} bytes
   * @param {string | null} type
   */
  async put([path, hash], bytes, type) {
    const { cache, names } = await this.open();
    const name = this.name(hash, path);
    await cache.put(name, new Response(bytes, { headers: headersOf(bytes, type) }));
    names.add(name);
  }

  /** @param {Listed} file @returns {Promise<any>} its value where it is kept as JSON, or null */
  async json(file) {
    const found = await this.get(file);
    return found ? found.json() : null;
  }

  /** @param {Iterable<Listed>} files all that stay; everything else goes */
  async keepOnly(files) {
    const { cache, names } = await this.open();
    const stay = new Set([this.name("state", ""), ...[...files].map(([path, hash]) => this.name(hash, path))]);
    for (const name of [...names].filter((name) => !stay.has(name))) {
      names.delete(name);
      await cache.delete(name);
    }
  }

  /** @returns {Promise<any>} what was noted last, or null */
  async state() {
    const { cache } = await this.open();
    const found = await cache.match(this.name("state", ""));
    try {
      return found ? await found.json() : null;
    } catch {
      return null;
    }
  }

  /** @param {unknown} value */
  async note(value) {
    const { cache } = await this.open();
    await cache.put(this.name("state", ""), new Response(JSON.stringify(value)));
  }

  async forget() {
    this.opened = null;
    await caches.delete(NAME + this.scope);
  }
}

/** Everything that a worker of a scope ever kept, in whatever form. @param {string} scope */
export async function forgetAll(scope) {
  const names = (await caches.keys()).filter(
    (name) => name.startsWith("rimbook ") && name.endsWith(` ${scope}`),
  );
  await Promise.all(names.map((name) => caches.delete(name)));
}

/**
 * @param {ArrayBuffer} bytes
 * @param {string | null} type
 */
export function headersOf(bytes, type) {
  return { "Content-Length": String(bytes.byteLength), ...(type ? { "Content-Type": type } : {}) };
}
