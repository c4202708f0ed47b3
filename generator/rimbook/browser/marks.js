/**
 * One hole marked wherever it appears. Pointing or focusing marks for the moment; the address (`#R12`), a
 * click on a hole, or Enter marks until Escape, unless another module has taken it. The
 * readout is never empty, lest the page jump under the pointer, and keeps its link while that has the focus.
 *
 * A hole is `[data-address="R12"]` in a drawing (`[data-rb-drawing] svg`) and `tr[data-hole="R12"]` in the
 * table; a link to `#R12` counts as pointing at it. What is marked has the class `is-marked`, in a
 * drawing also a ring `.rb-ring`, and the table is `is-live`; each drawing says in `.rb-readout` what the table has on the hole.
 */

import { el, fill, isTyping } from "./dom.js";
import { showHash } from "./hash.js";
import { inOrder, readAddress, step, written } from "./hole_walk.js";

const SVG = "http://www.w3.org/2000/svg";
const RING_ROOM = 0.35;
const HINT = "Point at a hole, or tap it, to read it here.";

/**
 * @param {ParentNode} page
 * @param {(row: HTMLTableRowElement) => string} describe what the table says of a hole
 */
export function startMarks(page, describe) {
  const holes = [...page.querySelectorAll("svg [data-address]")].filter((hole) => hole instanceof SVGElement);
  const rows = [...page.querySelectorAll("tr[data-hole]")].filter(
    (row) => row instanceof HTMLTableRowElement,
  );
  if (!holes.length && !rows.length) return;
  const everywhere = [...holes, ...rows];
  const order = inOrder(everywhere.map(addressOf));
  const readouts = addReadouts(page);
  watchDrawings(readouts);
  rows[0]?.closest("table")?.classList.add("is-live");
  /** @type {string | null} */
  let pinned = null;
  /** @type {string | null} */
  let pointed = null;
  /** @type {Element[]} */
  let marked = [];

  const show = () => {
    const now = pointed ?? pinned;
    marked.forEach(unmark);
    marked = everywhere.filter((element) => addressOf(element) === now);
    for (const element of marked) element.classList.add("is-marked");
    const rings = marked.map(ring).filter((drawn) => drawn !== null);
    marked = [...marked, ...rings];
    const row = rows.find((each) => each.dataset["hole"] === now);
    for (const readout of readouts) {
      if (row && now) say(readout, describe(row), el("a", { href: `#${now}` }, "In the table"));
      else if (!now) say(readout, HINT);
    }
  };

  /** @param {string | null} address */
  const point = (address) => {
    if (address === pointed) return;
    pointed = address;
    show();
  };

  /** @param {string | null} address */
  const pin = (address) => {
    [pinned, pointed] = [address, null];
    if (!belongsToOthers(location.hash)) showHash(address ? `#${address}` : "");
    show();
  };

  const followAddress = () => {
    const asked = readAddress(decodedHash());
    const address = asked && written(asked);
    const known = address !== null && order.includes(address);
    [pinned, pointed] = [known ? address : null, null];
    show();
    if (known && address) bringIntoView(everywhere.filter((element) => addressOf(element) === address));
    else if (address) {
      for (const readout of readouts) readout.textContent = `This map has no hole ${address}.`;
      readouts[0]?.scrollIntoView({ block: "center" });
    }
  };

  rove(holes, order);
  page.addEventListener("pointerover", (event) => point(pointedAt(event.target, order)));
  page.addEventListener("pointerout", (event) => {
    if (event instanceof PointerEvent && !pointedAt(event.relatedTarget, order)) point(null);
  });
  page.addEventListener("focusin", (event) => point(pointedAt(event.target, order)));
  // Where the focus goes counts: else the link that it goes to would be gone before it arrives.
  page.addEventListener("focusout", (event) => {
    pointed = event instanceof FocusEvent ? pointedAt(event.relatedTarget, order) : null;
    show();
  });
  page.addEventListener("click", (event) => {
    const address =
      !event.defaultPrevented && event.target instanceof Element && !event.target.closest("a, button")
        ? pointedAt(event.target, order)
        : null;
    if (address) pin(address === pinned ? null : address);
  });
  page.addEventListener("keydown", (event) => {
    if (!(event instanceof KeyboardEvent)) return;
    const onHole = event.target instanceof SVGElement ? pointedAt(event.target, order) : null;
    if (event.key === "Escape" && !isTyping(event.target) && (pinned ?? pointed)) pin(null);
    else if (onHole && (event.key === "Enter" || event.key === " ")) {
      event.preventDefault();
      pin(onHole);
    }
  });
  addEventListener("hashchange", followAddress);
  followAddress();
}

/** @param {Element} element */
function addressOf(element) {
  return element.getAttribute("data-address") ?? element.getAttribute("data-hole") ?? "";
}

/**
 * The hole that something belongs to, or leads to.
 * @param {EventTarget | null} target
 * @param {readonly string[]} order
 */
function pointedAt(target, order) {
  if (!(target instanceof Element)) return null;
  const link = target.closest('a[href^="#"]')?.getAttribute("href") ?? "";
  const found =
    readAddress(link) ?? readAddress(addressOf(target.closest("[data-address], [data-hole]") ?? target));
  const address = found && written(found);
  return address && order.includes(address) ? address : null;
}

/**
 * Whether more than a hole stands behind the `#`, as `#sheet=…`: that is not for this module to write over.
 * @param {string} hash
 */
function belongsToOthers(hash) {
  return /^#[a-z]+=/.test(hash);
}

function decodedHash() {
  try {
    return decodeURIComponent(location.hash);
  } catch {
    return "";
  }
}

/** @param {Element} element */
function unmark(element) {
  if (element.matches(".rb-ring")) element.remove();
  else element.classList.remove("is-marked");
}

/**
 * A ring round a hole of a drawing, on top of its neighbours: round for a hole, with round ends for a row.
 * @param {Element} hole
 */
function ring(hole) {
  if (!(hole instanceof SVGGraphicsElement) || !hole.parentNode) return null;
  const { x, y, width, height } = hole.getBBox();
  const row = width > 2 * height || height > 2 * width;
  const room = row ? 1 : Math.max(width, height) * RING_ROOM;
  const attributes = {
    class: "rb-ring",
    x: x - room,
    y: y - room,
    width: width + 2 * room,
    height: height + 2 * room,
    rx: Math.min(width, height) / 2 + room,
    fill: "none",
    stroke: "currentColor",
    "stroke-width": 2,
    "pointer-events": "none",
    "aria-hidden": "true",
    transform: hole.getAttribute("transform") ?? "",
  };
  const drawn = document.createElementNS(SVG, "rect");
  for (const [name, value] of Object.entries(attributes)) drawn.setAttribute(name, String(value));
  hole.parentNode.append(drawn);
  return drawn;
}

/**
 * Only one hole of a drawing is in the tab order; arrow keys walk along the rim.
 * @param {readonly SVGElement[]} holes
 * @param {readonly string[]} order
 */
function rove(holes, order) {
  for (const drawing of new Set(holes.map((hole) => hole.ownerSVGElement))) {
    const own = new Map(
      holes.filter((hole) => hole.ownerSVGElement === drawing).map((hole) => [addressOf(hole), hole]),
    );
    const walk = order.filter((address) => own.has(address));
    /** @param {string | undefined} current */
    const hold = (current) => {
      for (const [address, hole] of own) hole.setAttribute("tabindex", address === current ? "0" : "-1");
    };
    hold(walk[0]);
    // Not the drawing listens: some browsers let Tab stop at an SVG that listens to the focus.
    drawing?.parentElement?.addEventListener("focusin", (event) => {
      const hole = event.target;
      if (hole instanceof SVGElement && own.get(addressOf(hole)) === hole) hold(addressOf(hole));
    });
    drawing?.addEventListener("keydown", (event) => {
      if (!(event.target instanceof Element) || event.altKey || event.ctrlKey || event.metaKey) return;
      const to = step(walk, addressOf(event.target), event.key);
      if (!to) return;
      event.preventDefault();
      own.get(to)?.focus();
    });
  }
}

/**
 * A readout comes straight after its drawing, so that Tab leads from a hole to its link.
 * @param {ParentNode} page
 */
function addReadouts(page) {
  return [...page.querySelectorAll("[data-rb-drawing]")]
    .filter((figure) => figure.querySelector("[data-address]"))
    .map((figure) => {
      const readout = el("p", { class: "rb-readout" });
      const drawing = figure.querySelector(".rb-scroll");
      if (drawing) drawing.after(readout);
      else figure.append(readout);
      return readout;
    });
}

/**
 * The drawing across the middle of the window is the one looked at: only its readout stays at the lower edge.
 * @param {readonly Element[]} readouts
 */
function watchDrawings(readouts) {
  const watch = new IntersectionObserver(
    (seen) => seen.forEach(({ target, isIntersecting }) => target.classList.toggle("is-looked-at", isIntersecting)),
    { rootMargin: "-50% 0px" },
  );
  for (const readout of readouts) if (readout.parentElement) watch.observe(readout.parentElement);
}

/**
 * What says the same already, or has the focus, stays: its link would be lost to who is on it, or on the way to it.
 * @param {Element} readout
 * @param {string} words
 * @param {HTMLAnchorElement} [link]
 */
function say(readout, words, link) {
  const whole = link ? `${words} ${link.textContent}` : words;
  if (readout.textContent === whole || readout.contains(document.activeElement)) return;
  fill(readout, words, link && " ", link);
}

/**
 * The row goes to the middle of the window; a wide drawing scrolls only within its own frame.
 * @param {readonly Element[]} elements
 */
function bringIntoView(elements) {
  for (const element of elements) {
    const frame = element instanceof SVGElement ? element.closest(".rb-scroll") : null;
    if (frame) {
      const hole = element.getBoundingClientRect();
      const box = frame.getBoundingClientRect();
      frame.scrollLeft += hole.left + hole.width / 2 - (box.left + box.width / 2);
    }
  }
  elements.find((element) => element instanceof HTMLTableRowElement)?.scrollIntoView({ block: "center" });
}
