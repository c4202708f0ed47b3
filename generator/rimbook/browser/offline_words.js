/** What is kept for offline use, in words. */

import { counted } from "./words.js";

/** @typedef {import("./offline_kept.js").Kept} Kept */

/**
 * What a page knows: what the worker tells, and whether the page itself is of an older edition than what is kept.
 * @typedef {Kept & { behind: boolean }} Told
 */

/** @type {Record<Kept["trouble"], string>} */
const TROUBLE = {
  "": "",
  away: "The network is gone: the rest follows when it is back.",
  full: "This device gives no more room. What is kept stays; free some room and try again.",
  refused: "This browser refuses to keep anything more: a private window or a setting may be why.",
  nothing: "This site offers nothing to keep.",
  missing: "The server did not send every file. They are tried again later.",
};

/** @param {Kept} kept */
export function isWhole({ files, allFiles }) {
  return allFiles > 0 && files >= allFiles;
}

/**
 * How much is kept, in one sentence.
 * @param {Kept} kept
 */
export function howMuch(kept) {
  const { files, allFiles, bytes, allBytes, whole } = kept;
  if (files === 0) return kept.busy ? "Being kept for offline use…" : "Nothing is kept for offline use yet.";
  if (isWhole(kept)) return `Kept for offline use: all ${counted(allFiles, "file")}, ${size(allBytes)}.`;
  const part = `${files.toLocaleString("en")} of ${counted(allFiles, "file")}`;
  if (whole) return `Kept for offline use: ${part}.`;
  const room = `${size(bytes)} of ${size(allBytes)}`;
  return `Kept for offline use: what every page needs, and the pages you open (${part}, ${room}).`;
}

/**
 * What else there is to say.
 * @param {Told} told
 */
export function whatElse(told) {
  const words = [isWhole(told) ? "" : TROUBLE[told.trouble]];
  if (told.behind) words.push("A newer edition is kept: it shows when you open or reload a page.");
  return words.filter(Boolean).join(" ");
}

/**
 * @param {number} bytes
 * @returns {string} as `11 MB`
 */
export function size(bytes) {
  const mega = bytes / 1e6;
  if (mega >= 1000) return `${(mega / 1000).toFixed(1)} GB`;
  return `${mega < 10 ? Math.max(0.1, mega).toFixed(1) : Math.round(mega).toLocaleString("en")} MB`;
}

/** Why there is no worker, where there is none. */
export const NO_WORKER = Object.freeze({
  folder: "Opened from a folder: the whole book is in it, with or without a network.",
  insecure: "This browser keeps pages for offline use only from an address that begins with https.",
  serving: "These pages are being written and shown at once, so nothing is kept for offline use.",
  refused: "This browser refuses to keep pages for offline use: a private window or a setting may be why.",
});
