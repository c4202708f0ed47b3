/** Getting one file of an edition from the server, and knowing that it is the right one. */

import { addressOf } from "./offline_paths.js";
import { hashOf } from "./offline_store.js";

/** @typedef {import("./offline_edition.js").Listed} Listed */

/** @typedef {"away" | "gone" | "other"} Miss no network; no such file; a file of another edition */

/** @typedef {{ bytes: ArrayBuffer, type: string | null }} Got */

/**
 * The bytes that a list speaks of. A cache on the way may still hold older ones, so it is asked round that too.
 * @param {Listed} file
 * @param {string} scope
 * @returns {Promise<{ got: Got | null, miss: Miss | null }>} with "other", `got` is what came instead
 */
export async function fetchListed([path, hash], scope) {
  /** @type {Got | null} */
  let got = null;
  for (const query of ["", `?${hash}`]) {
    const found = await fetchWhole(addressOf(path, scope) + query);
    if (found.miss) return found;
    got = found.got;
    if (got && (await hashOf(got.bytes)) === hash) return { got, miss: null };
  }
  return { got, miss: "other" };
}

/**
 * @param {string} address
 * @returns {Promise<{ got: Got | null, miss: Miss | null }>}
 */
export async function fetchWhole(address) {
  try {
    const response = await fetch(address, { cache: "no-cache" });
    if (!response.ok) return { got: null, miss: response.status === 404 ? "gone" : "away" };
    return {
      got: { bytes: await response.arrayBuffer(), type: response.headers.get("Content-Type") },
      miss: null,
    };
  } catch {
    return { got: null, miss: "away" };
  }
}
