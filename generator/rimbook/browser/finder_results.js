/** What was found, as a plain list of links that arrow keys walk through. */

import { el, fill } from "./dom.js";
import { keepButton } from "./keep_button.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {import("./index_data.js").Entry} Entry */

const AT_ONCE = 40;

/** @type {Record<string, string>} */
const KINDS = { part: "part", maker: "maker", bore: "bore", sport: "sport", page: "page", word: "word" };

/**
 * @typedef {object} Results
 * @property {HTMLElement} element
 * @property {(hits: readonly (number | Entry)[], index: Index) => void} show
 * @property {() => HTMLAnchorElement | undefined} first
 */

/**
 * @param {string} root the way from the page to the root of the site
 * @param {() => void} leave puts the reader back into the box
 * @returns {Results}
 */
export function finderResults(root, leave) {
  const list = el("ol", { class: "rb-finder-results", id: "rb-finder-results", role: "list" });
  const more = el("button", { type: "button", class: "rb-button", hidden: true }, "Show more");
  const element = el("div", {}, list, more);
  /** @type {readonly (number | Entry)[]} */
  let hits = [];
  /** @type {Index | undefined} */
  let known;

  const add = () => {
    if (!known) return;
    const index = known;
    const from = list.childElementCount;
    list.append(...hits.slice(from, from + AT_ONCE).map((hit) => row(hit, index, root)));
    more.hidden = list.childElementCount >= hits.length;
  };
  more.addEventListener("click", () => {
    const from = list.childElementCount;
    add();
    links(list)[from]?.focus();
  });
  list.addEventListener("keydown", (event) => {
    if (event.key === "Escape") return leave();
    const all = links(list);
    const at = all.findIndex((link) => link.closest("li")?.contains(document.activeElement));
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (to === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    if (to < 0) leave();
    else all[to]?.focus();
  });

  return {
    element,
    show(newHits, index) {
      [hits, known] = [newHits, index];
      fill(list);
      add();
    },
    first: () => links(list)[0],
  };
}

/** @param {HTMLElement} list */
function links(list) {
  return [...list.querySelectorAll("a")];
}

/**
 * @param {number | Entry} hit
 * @param {Index} index
 * @param {string} root
 */
function row(hit, index, root) {
  if (typeof hit === "number") return frameRow(hit, index, root);
  const kind = KINDS[hit.kind] ?? hit.kind;
  return el(
    "li",
    {},
    el("a", { href: root + hit.path }, hit.title),
    " ",
    el("span", { class: "rb-finder-facts" }, [kind, hit.note].filter(Boolean).join(" – ")),
  );
}

/**
 * @param {number} frame
 * @param {Index} index
 * @param {string} root
 */
function frameRow(frame, index, root) {
  const { columns } = index;
  const year = columns.years[frame];
  const name = `${index.names[frame]}${year ? ` (${year})` : ""}`;
  const bores = index.boreSets[columns.boreSet[frame] ?? -1] ?? [];
  const shared = columns.sharedSets[columns.sharedSet[frame] ?? -1] ?? [];
  const facts = [
    columns.makers[columns.maker[frame] ?? -1],
    columns.sports[columns.sport[frame] ?? -1],
    columns.patterns[columns.pattern[frame] ?? -1]?.replace("x", " × "),
    counted(columns.holes[frame] ?? 0, "hole"),
    bores.length ? `bores ${listed(bores)} mm` : "bores unknown",
    shared.length ? `shared at ${runs(shared)}` : "no shared hole",
  ];
  return el(
    "li",
    {},
    el("a", { href: root + index.path(frame) }, name),
    " ",
    el("span", { class: "rb-finder-facts" }, facts.join(", ")),
    " ",
    keepButton(index.slug(frame), name),
  );
}

/**
 * `9–11, 27`.
 * @param {readonly number[]} places in order
 */
function runs(places) {
  /** @type {[number, number][]} */
  const found = [];
  for (const place of places) {
    const last = found.at(-1);
    if (last && place === last[1] + 1) last[1] = place;
    else found.push([place, place]);
  }
  return found.map(([first, last]) => (first === last ? `${first}` : `${first}–${last}`)).join(", ");
}
