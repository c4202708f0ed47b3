/** A photo on which points are picked: with a pointer, or with a sight that keys move pixel by pixel. */

import { el } from "./dom.js";
import { svg, through } from "./draft_svg.js";

/** @typedef {import("./draft_outline.js").Point} Point */

const [REACH, WANDER] = [12, 5]; // pixels of the screen
const MOST_ZOOM = 40;
const LEAP = 20;
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/**
 * What is laid over the photo, all in its pixels.
 * @typedef {object} Over
 * @property {readonly (readonly [string, Point, string])[]} marks what each is, where, and its short name
 * @property {readonly Point[]} line on which the holes should sit
 * @property {readonly Point[]} holes where they are expected
 * @property {string} current the mark that is asked for
 */

/**
 * @typedef {object} Host
 * @property {(point: Point) => void} pick
 * @property {(mark: string, point: Point, isNew: boolean) => void} move
 * @property {(key: string) => boolean} press any other key; whether it meant something
 */

/** @param {Host} host */
export function photoStage(host) {
  let size = { width: 1, height: 1 };
  let zoom = 1;
  /** @type {Point} */
  let middle = [0, 0];
  /** @type {Point} */
  let sight = [0, 0];
  let isMoved = false;
  /** @type {Over} */
  let over = { marks: [], line: [], holes: [], current: "" };
  const image = svg("image", { preserveAspectRatio: "none" });
  const layer = svg("g", { fill: "none" });
  const drawing = svg("svg", { class: "rb-draft-photo-drawing", "aria-hidden": "true" }, image, layer);
  const element = el("div", { class: "rb-draft-photo-stage", tabindex: "0", role: "application", "aria-label": "Photo", "aria-describedby": "rb-draft-photo-keys" }, drawing);
  const told = el("p", { class: "rb-draft-photo-at" });

  const draw = () => {
    const [w, h] = [size.width / zoom, size.height / zoom];
    middle = [clamp(middle[0], w / 2, size.width - w / 2), clamp(middle[1], h / 2, size.height - h / 2)];
    drawing.setAttribute("viewBox", [middle[0] - w / 2, middle[1] - h / 2, w, h].join(" "));
    told.textContent = `Sight at ${sight[0]}, ${sight[1]} pixels`;
    const unit = 1 / scale();
    layer.replaceChildren(
      ...twice(through(over.line, over.line.length > 0), "rb-draft-photo-line"),
      ...over.holes.map(([cx, cy]) => svg("circle", { cx, cy, r: 5 * unit, class: "rb-draft-photo-hole" })),
      ...over.marks.flatMap(([name, at, words]) => [
        ...twice(crossAt(at, 7 * unit), name === over.current ? "rb-draft-photo-mark is-current" : "rb-draft-photo-mark"),
        svg("text", { x: at[0] + 8 * unit, y: at[1] - 8 * unit, "font-size": 13 * unit, "stroke-width": 3 * unit, class: "rb-draft-photo-name" }, words),
      ]),
      ...twice(crossAt(sight, 26 * unit, 5 * unit), "rb-draft-photo-sight"),
    );
  };
  const scale = () => Math.max(1e-6, matrix()?.a ?? 1);
  const matrix = () => (drawing instanceof SVGSVGElement ? drawing.getScreenCTM() : null);
  const pointOf = (/** @type {MouseEvent} */ event) => {
    const found = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix()?.inverse());
    return /** @type {Point} */ ([clamp(tenth(found.x), 0, size.width), clamp(tenth(found.y), 0, size.height)]);
  };
  const look = (/** @type {Point} */ point) => {
    const [w, h] = [size.width / zoom, size.height / zoom];
    if (Math.abs(point[0] - middle[0]) > w * 0.45 || Math.abs(point[1] - middle[1]) > h * 0.45) middle = point;
  };
  const zoomTo = (/** @type {number} */ next, /** @type {Point} */ at) => {
    [zoom, middle] = [clamp(next, 1, MOST_ZOOM), at];
    draw();
  };

  /** @type {{start: Point, from: [number, number], mark: string | null, isGone: boolean} | null} */
  let held = null;
  element.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    const start = pointOf(event);
    const near = over.marks
      .map(([name, at]) => ({ name, away: Math.hypot(at[0] - start[0], at[1] - start[1]) }))
      .filter(({ away }) => away * scale() < REACH)
      .sort((a, b) => a.away - b.away);
    held = { start, from: [event.clientX, event.clientY], mark: near[0]?.name ?? null, isGone: false };
    element.setPointerCapture(event.pointerId);
  });
  element.addEventListener("pointermove", (event) => {
    if (!held) return;
    const isFirst = !held.isGone && Math.hypot(event.clientX - held.from[0], event.clientY - held.from[1]) > WANDER;
    held.isGone ||= isFirst;
    if (!held.isGone) return;
    const here = pointOf(event);
    if (held.mark) return host.move(held.mark, here, isFirst);
    middle = [middle[0] + held.start[0] - here[0], middle[1] + held.start[1] - here[1]];
    draw();
  });
  element.addEventListener("pointerup", (event) => {
    const was = held;
    held = null;
    if (!was || was.isGone) return;
    sight = pointOf(event);
    host.pick(sight);
  });
  element.addEventListener("pointercancel", () => (held = null));
  element.addEventListener("keydown", (event) => {
    const way = ARROWS[/** @type {keyof typeof ARROWS} */ (event.key)];
    if (way && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const far = event.shiftKey ? LEAP : 1;
      sight = [clamp(sight[0] + far * way[0], 0, size.width), clamp(sight[1] + far * way[1], 0, size.height)];
      isMoved = true;
      look(sight);
      draw();
    } else if (event.key === "+" || event.key === "-") zoomTo(event.key === "+" ? zoom * 1.5 : zoom / 1.5, sight);
    else if (!host.press(event.ctrlKey || event.metaKey ? `Control+${event.key.toLowerCase()}` : event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  });
  new ResizeObserver(draw).observe(element);

  return {
    element: el("div", {}, element, told),
    get sight() {
      return sight;
    },
    /** Whether keys moved the sight since it was put somewhere. */
    get isMoved() {
      return isMoved;
    },
    /**
     * @param {string} address of the image
     * @param {{width: number, height: number}} whole
     */
    open(address, whole) {
      [size, zoom, middle, sight, isMoved] = [whole, 1, [whole.width / 2, whole.height / 2], [Math.round(whole.width / 2), Math.round(whole.height / 2)], false];
      for (const [name, value] of Object.entries({ href: address, width: whole.width, height: whole.height })) image.setAttribute(name, String(value));
      draw();
    },
    /** @param {Over} next */
    show(next) {
      over = next;
      draw();
    },
    /** @param {Point} point where the next one is expected, or where it is */
    aim(point) {
      [sight, isMoved] = [[clamp(Math.round(point[0]), 0, size.width), clamp(Math.round(point[1]), 0, size.height)], false];
      look(sight);
      draw();
    },
    /** @param {number} share of full strength, 0 to 1 */
    strengthen(share) {
      image.setAttribute("opacity", String(share));
    },
    /** @param {number} by */
    zoom(by) {
      zoomTo(by ? zoom * by : 1, sight);
    },
  };
}

/**
 * A line seen on any ground: dark on a broader light one.
 * @param {string} d
 * @param {string} style
 */
function twice(d, style) {
  return [svg("path", { d, class: "rb-draft-photo-ground" }), svg("path", { d, class: style })];
}

/**
 * @param {Point} at
 * @param {number} arm
 * @param {number} [gap] left open in the middle
 */
function crossAt([x, y], arm, gap = 0) {
  return [[1, 0], [-1, 0], [0, 1], [0, -1]].map(([a, b]) => `M${x + gap * a} ${y + gap * b}L${x + arm * a} ${y + arm * b}`).join(""); // prettier-ignore
}

/**
 * @param {number} value
 * @param {number} low
 * @param {number} high
 */
function clamp(value, low, high) {
  return Math.min(Math.max(value, low), Math.max(low, high));
}

/** @param {number} value */
function tenth(value) {
  return Math.round(value * 10) / 10;
}
