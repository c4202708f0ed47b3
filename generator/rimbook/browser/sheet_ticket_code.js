/** The code to scan on a ticket. */

import { qr, qrPath, QUIET } from "./qr.js";
import { shape } from "./sheet_sign.js";

/** Millimetres on paper: modules smaller than this are lost on a plain printer. */
const MODULE = 0.42;
const SMALLEST = 26;
const LARGEST = 60;
/** From here on the modules of the better-mended level would be too many. */
const DENSE = 13;

/**
 * @param {string} address
 * @returns {SVGElement | null} null where the address is too long to be scanned from paper
 */
export function codePicture(address) {
  const better = qr(address, { level: "M" });
  const code = better && better.version <= DENSE ? better : qr(address, { level: "L" });
  if (!code) return null;
  const size = code.modules.length + 2 * QUIET;
  const width = Math.max(SMALLEST, size * MODULE);
  if (width > LARGEST) return null;
  const drawn = shape("svg", {
    "viewBox": `0 0 ${size} ${size}`,
    "width": `${width.toFixed(1)}mm`,
    "height": `${width.toFixed(1)}mm`,
    "class": "rb-ticket-code",
    "role": "img",
    "aria-label": "Code to scan: it opens this sheet again",
    "shape-rendering": "crispEdges",
  });
  drawn.append(shape("rect", { width: String(size), height: String(size), fill: "#ffffff" }));
  drawn.append(shape("path", { d: qrPath(code), fill: "#000000" }));
  return drawn;
}
