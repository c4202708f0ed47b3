/**
 * Data reach a page as classic scripts that call `rimbook.put(name, value)`: from a folder on disk a
 * browser refuses both modules and `fetch`, but never such a script.
 */

/** @type {Map<string, unknown>} */
const given = new Map();
/** @type {Map<string, Promise<unknown>>} */
const asked = new Map();

/**
 * @param {string} name
 * @param {unknown} value
 */
function put(name, value) {
  given.set(name, value);
}

Object.defineProperty(globalThis, "rimbook", { value: Object.freeze({ put }) });

/**
 * The data of a name, from a script that is fetched once. A failure may be tried again.
 * @param {string} name
 * @param {string} source the script's address
 * @returns {Promise<unknown>}
 */
export function load(name, source) {
  const known = asked.get(name);
  if (known) return known;
  /** @type {Promise<unknown>} */
  const promise = new Promise((resolve, reject) => {
    if (given.has(name)) return resolve(given.get(name));
    const script = document.createElement("script");
    const fail = () => {
      asked.delete(name);
      script.remove();
      reject(new Error(`${source} could not be loaded.`));
    };
    script.addEventListener("error", fail);
    script.addEventListener("load", () => (given.has(name) ? resolve(given.get(name)) : fail()));
    script.src = source;
    document.head.append(script);
  });
  asked.set(name, promise);
  return promise;
}
