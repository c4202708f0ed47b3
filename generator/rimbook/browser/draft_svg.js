/** The marks of a drawing as elements, the same as in the drawings of the site. Lengths are units of the page. */

const SVG = "http://www.w3.org/2000/svg";

/**
 * What the site draws bores with, as it hands it over.
 * @typedef {object} Marks
 * @property {number} ring radius round a shared hole, in symbol radii
 * @property {{style: string, limit: number | null, outline: string, words: string}[]} classes by rising limit
 */

/** @typedef {[number, number]} Spot */

/**
 * @param {string} name
 * @param {Record<string, string | number>} [attributes]
 * @param {...(Node | string)} children
 * @returns {SVGElement}
 */
export function svg(name, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    element.setAttribute(key, typeof value === "number" ? String(Math.round(value * 100) / 100) : value);
  }
  element.append(...children);
  return element;
}

/**
 * Path data through spots.
 * @param {readonly Spot[]} spots
 * @param {boolean} [isClosed]
 */
export function through(spots, isClosed = false) {
  if (!spots.length) return "";
  const points = spots.map(([x, y]) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`);
  return `M${points.join("L")}${isClosed ? "Z" : ""}`;
}

/**
 * @param {number | null} bore
 * @param {Marks} marks
 */
export function boreClass(bore, { classes }) {
  if (bore === null) return null;
  return classes.find(({ limit }) => limit === null || bore <= limit + 1e-9) ?? classes[classes.length - 1];
}

/**
 * One place round the origin: its shape by the class of its bore, a ring where two strings share it.
 * @param {{drilled: boolean, bore: number | null, passes: readonly string[]}} hole
 * @param {number} radius
 * @param {Marks} marks
 * @returns {SVGElement[]}
 */
export function markOf(hole, radius, marks) {
  if (!hole.drilled) return [cross(radius * 0.5)];
  const drawn = [];
  if (hole.passes.length > 1) {
    drawn.push(svg("circle", { r: radius * marks.ring, class: "rim-mark-ring", "stroke-width": Math.max(1, radius * 0.3) }));
  }
  const found = boreClass(hole.bore, marks);
  if (!found) return [...drawn, question(radius)];
  return [...drawn, svg("path", { d: found.outline, transform: `scale(${radius})`, class: `rim-mark ${found.style}` })];
}

/** @param {number} arm */
function cross(arm) {
  const d = `M${-arm} ${-arm}L${arm} ${arm}M${-arm} ${arm}L${arm} ${-arm}`;
  return svg("path", { d, class: "rim-mark-undrilled", "stroke-width": 0.9 });
}

/** @param {number} radius */
function question(radius) {
  const dashes = `${radius * 0.5} ${radius * 0.285}`;
  const factor = radius * 0.9;
  return svg(
    "g",
    { class: "rim-mark-unknown", "stroke-width": Math.max(0.9, radius * 0.24) },
    svg("circle", { r: radius, class: "rim-mark-hollow", "stroke-dasharray": dashes }),
    svg("path", {
      d: "M-.4-.28C-.4-.95 .5-.85 .36-.2C.3 .08 0 .05 0 .36M0 .72V.74",
      transform: `scale(${factor})`,
      "stroke-width": Math.max(0.9, radius * 0.24) / factor,
      "stroke-linecap": "round",
    }),
  );
}

/**
 * Strings over and under: path data of mains and of crosses, each broken where it goes under.
 * @param {readonly [Spot, Spot][]} mains in order across the head
 * @param {readonly [Spot, Spot][]} crosses in order down the head
 * @param {number} gap on both sides of what passes above
 * @returns {[string, string]}
 */
export function weave(mains, crosses, gap) {
  const [mainCuts, crossCuts] = [mains, crosses].map((lines) => lines.map(() => /** @type {number[]} */ ([])));
  mains.forEach(([[ax, ay], [bx, by]], i) => {
    const [mx, my] = [bx - ax, by - ay];
    crosses.forEach(([[cx, cy], [dx, dy]], j) => {
      const [kx, ky] = [dx - cx, dy - cy];
      const turn = mx * ky - my * kx;
      const onMain = ((cx - ax) * ky - (cy - ay) * kx) / turn;
      const onCross = ((cx - ax) * my - (cy - ay) * mx) / turn;
      if (!turn || onMain <= 0 || onMain >= 1 || onCross <= 0 || onCross >= 1) return;
      if ((i + j) % 2) mainCuts[i].push(onMain);
      else crossCuts[j].push(onCross);
    });
  });
  const drawn = (/** @type {readonly [Spot, Spot][]} */ lines, /** @type {number[][]} */ cuts) =>
    lines.map((line, index) => broken(line, cuts[index], gap)).join("");
  return [drawn(mains, mainCuts), drawn(crosses, crossCuts)];
}

/**
 * @param {[Spot, Spot]} line
 * @param {number[]} cuts shares of its length
 * @param {number} gap
 */
function broken([[ax, ay], [bx, by]], cuts, gap) {
  const length = Math.hypot(bx - ax, by - ay);
  if (!length) return "";
  const half = gap / length;
  const shares = [0, ...cuts.sort((a, b) => a - b).flatMap((cut) => [cut - half, cut + half]), 1];
  const at = (/** @type {number} */ share) => /** @type {Spot} */ ([ax + (bx - ax) * share, ay + (by - ay) * share]);
  let data = "";
  for (let index = 0; index < shares.length; index += 2) data += through([at(shares[index]), at(shares[index + 1])]);
  return data;
}
