/**
 * Text as a QR code: byte mode, versions 1 to 40, after ISO/IEC 18004:2015. What is no ASCII is written in
 * UTF-8, which readers recognise by themselves.
 */

import { codewords, versionFor } from "./qr_codewords.js";
import { matrix } from "./qr_matrix.js";

/** @typedef {import("./qr_codewords.js").Level} Level */

/** Light modules that must stay free on every side (5.3.8). */
export const QUIET = 4;

/**
 * @typedef {object} Code
 * @property {number} version 1 to 40
 * @property {Level} level
 * @property {number} mask 0 to 7
 * @property {boolean[][]} modules rows from the top, without the quiet zone; true is dark
 */

/**
 * @param {string} text
 * @param {object} [how]
 * @param {Level} [how.level]
 * @param {number} [how.version] at least
 * @param {number | null} [how.mask] the best one if left out
 * @returns {Code | null} null where the text is too long for any
 */
export function qr(text, { level = "M", version: atLeast = 1, mask: asked = null } = {}) {
  const bytes = new TextEncoder().encode(text);
  const version = versionFor(bytes.length, level, atLeast);
  if (version === null) return null;
  return { version, level, ...matrix(version, level, codewords(bytes, version, level), asked) };
}

/**
 * The dark modules as path data, a module one unit, the quiet zone included.
 * @param {Code} code
 */
export function qrPath({ modules }) {
  const runs = modules.map((row, i) => {
    const line = row.map(Number).join("");
    return [...line.matchAll(/1+/g)].map(
      (run) => `M${run.index + QUIET} ${i + QUIET}h${run[0].length}v1h-${run[0].length}z`,
    );
  });
  return runs.flat().join("");
}
