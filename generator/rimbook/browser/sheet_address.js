/** Where a sheet can be opened again, and what somebody pasted to open one. */

import { codeInHash, hashOfSheet } from "./sheet_kept.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */

/**
 * @typedef {object} Reached
 * @property {string} page of the book, as a reader would write it down
 * @property {string} address that opens the sheet; empty where the page lies in a folder of this device only
 * @property {string} code the sheet by itself
 */

/**
 * A page knows its public address, or is where it is. From a folder nobody else reaches it.
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {{canonical: string, here: string}} where the public address, or empty, and the address at hand
 * @returns {Reached}
 */
export function reached(frame, sheet, { canonical, here }) {
  const hash = hashOfSheet(frame, sheet);
  const page = (canonical || here).replace(/#.*$/s, "");
  const code = codeInHash(hash);
  if (/^https?:/i.test(page)) return { page: page.replace(/^https?:\/\//i, ""), address: page + hash, code };
  return { page: page.split("/").slice(-3).join("/"), address: "", code };
}

/** @param {Document} page */
export function whereIs(page) {
  const link = page.querySelector("link[rel='canonical']");
  return { canonical: link instanceof HTMLLinkElement ? link.href : "", here: location.href };
}

/**
 * What somebody pasted: the whole address of a sheet, or its code alone.
 * @param {string} pasted
 * @returns {{code: string, slug: string}} the frame, where an address names one; without a code nothing was found
 */
export function readPasted(pasted) {
  const text = pasted.replace(/\s+/g, "");
  const at = text.indexOf("#");
  if (at < 0) return { code: /^\d+\.[\w.]+$/.test(text) ? text : "", slug: "" };
  const slug = /\/frames\/([a-z0-9-]+)\/(?:index\.html)?(?:\?.*)?$/.exec(text.slice(0, at))?.[1] ?? "";
  return { code: codeInHash(text.slice(at)), slug };
}
