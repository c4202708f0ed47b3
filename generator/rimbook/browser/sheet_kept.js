/**
 * Where a sheet lives: behind the `#` of the address, so that it can be sent to a colleague, and on the
 * device, so that it is there tomorrow. Both hold the same short text. Nothing goes anywhere else.
 */

import { onChangeElsewhere, recall, remember } from "./device.js";
import { decode, encode } from "./sheet_code.js";
import { isBlank } from "./sheet_state.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_code.js").Read} Read */

const KEY = "sheet";

/**
 * @typedef {object} Opened
 * @property {Read} read what to show
 * @property {"address" | "device" | "new"} from
 * @property {Sheet | null} other what lies on the device, if the address brought something else: ask before
 *   it is overwritten
 */

/**
 * What the page opens with: the address first, then the device.
 * @param {SheetFrame} frame
 * @param {string} hash
 * @returns {Opened}
 */
export function openSheet(frame, hash) {
  const sent = codeInHash(hash);
  const kept = keptCode(frame);
  const own = decode(frame, kept);
  if (!sent) return { read: own, from: kept ? "device" : "new", other: null };
  const isOther = kept !== "" && kept !== sent && !isBlank(own.sheet);
  return { read: decode(frame, sent), from: "address", other: isOther ? own.sheet : null };
}

/**
 * Keeps a sheet on the device.
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @returns {boolean} whether it will still be there next time
 */
export function keepSheet(frame, sheet) {
  return remember(`${KEY}.${frame.slug}`, isBlank(sheet) ? "" : encode(frame, sheet));
}

/**
 * Calls back when another tab has changed the same sheet.
 * @param {SheetFrame} frame
 * @param {(theirs: Sheet) => void} callback
 */
export function onSheetElsewhere(frame, callback) {
  onChangeElsewhere(`${KEY}.${frame.slug}`, () => callback(decode(frame, keptCode(frame)).sheet));
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @returns {string} with `#`, or empty for a blank sheet
 */
export function hashOfSheet(frame, sheet) {
  return isBlank(sheet) ? "" : `#${KEY}=${encode(frame, sheet)}`;
}

/**
 * @param {string} hash with or without `#`
 * @returns {string} empty where the address brings no sheet
 */
export function codeInHash(hash) {
  return new URLSearchParams(hash.replace(/^#/, "")).get(KEY) ?? "";
}

/**
 * @param {SheetFrame} frame
 * @returns {string} empty where the device holds no sheet
 */
export function keptCode({ slug }) {
  const kept = recall(`${KEY}.${slug}`);
  return typeof kept === "string" ? kept : "";
}
