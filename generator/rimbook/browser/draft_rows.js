/** The list of the holes in walk order: a list box that keeps the focus while its rows are made anew. */

import { el, fill } from "./dom.js";
import { sidesOf } from "./draft_edit.js";

/** @typedef {import("./draft_holes.js").Holes} Holes */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_settle.js").Hole} Hole */

/** @param {Holes} holes */
export function holeRows(holes) {
  const list = el("div", { class: "rb-draft-list", role: "listbox", tabindex: "0", "aria-label": "Holes along the walk", "aria-multiselectable": "true", "aria-describedby": "rb-draft-keys" });
  list.addEventListener("keydown", (event) => {
    if (holes.press(event)) event.preventDefault();
  });
  list.addEventListener("click", (event) => {
    const row = event.target instanceof Element ? event.target.closest("[data-number]") : null;
    if (row instanceof HTMLElement) holes.go(Number(row.dataset["number"]), event.shiftKey);
  });
  return {
    element: list,
    /**
     * @param {DraftFrame | null} frame
     * @param {ReadonlySet<string>} wrong holes with problems
     */
    show(frame, wrong) {
      const byAddress = new Map((frame?.holes ?? []).map((hole) => [hole.address, hole]));
      const { cursor, numbers, words, typed } = holes;
      const rows = words.map((word, index) => {
        const number = index + 1;
        const addresses = sidesOf(holes.which).map((side) => `${side}${number}`);
        const found = addresses.flatMap((address) => byAddress.get(address) ?? []);
        const isHere = number === cursor;
        const isWrong = addresses.some((address) => wrong.has(address));
        return rowOf(holes, number, word, found, frame, { isHere, isWrong, isChosen: numbers.includes(number), typed: isHere ? typed : "" });
      });
      fill(list, ...rows);
      list.setAttribute("aria-activedescendant", rows.length ? `rb-draft-hole-${cursor}` : "");
      const here = rows[cursor - 1];
      if (!here) return;
      const [top, bottom] = [here.offsetTop, here.offsetTop + here.offsetHeight];
      if (top < list.scrollTop + 40) list.scrollTop = top - 40;
      else if (bottom > list.scrollTop + list.clientHeight - 40) list.scrollTop = bottom - list.clientHeight + 40;
    },
  };
}

/**
 * @param {Holes} holes
 * @param {number} number
 * @param {string} word
 * @param {Hole[]} found on one side or on both
 * @param {DraftFrame | null} frame
 * @param {{isHere: boolean, isWrong: boolean, isChosen: boolean, typed: string}} state
 */
function rowOf(holes, number, word, found, frame, { isHere, isWrong, isChosen, typed }) {
  const name = holes.which === "both" ? String(number) : `${holes.which}${number}`;
  const isDepth = holes.mode === "depths";
  const value = holes.mode === "places" ? agreed(found, ({ place }) => place, "–") : agreed(found, ({ bore, depth }) => (isDepth ? depth : bore), "?");
  const more = found.length ? moreOf(found, frame) : [];
  const passes = typed && holes.mode === "strings" ? typed : word;
  const measured = typed && holes.mode === "places" ? typed : value;
  const unit = { strings: "bore", bores: "bore", depths: "rim depth", places: "place" }[holes.mode];
  const said = [`${name}: ${passWords(passes)}`, `${unit} ${measured === "?" || measured === "–" ? "unknown" : measured}`, ...more, isWrong && "has a problem"];
  return el(
    "div",
    {
      role: "option",
      id: `rb-draft-hole-${number}`,
      class: ["rb-draft-hole-row", isHere && "is-here", isChosen && "is-chosen", typed && `is-typing-${holes.mode}`].filter(Boolean).join(" "),
      "data-number": String(number),
      "aria-selected": String(isChosen),
      "aria-label": said.filter(Boolean).join(", "),
    },
    el("span", { class: "rb-draft-number" }, name),
    el("span", { class: "rb-draft-word" }, passes),
    el("span", { class: "rb-draft-value" }, word === "x" ? "" : measured),
    el("span", { class: "rb-draft-more" }, isWrong && el("b", { class: "rb-draft-bad" }, "!"), more.join(", ")),
  );
}

/**
 * What both sides have, or both with a stroke between.
 * @param {Hole[]} found
 * @param {(hole: Hole) => number | null} of
 * @param {string} unknown
 */
function agreed(found, of, unknown) {
  const texts = [...new Set(found.map((hole) => String(of(hole) ?? unknown)))];
  return texts.join(" / ") || unknown;
}

/**
 * @param {Hole[]} found
 * @param {DraftFrame | null} frame
 * @returns {string[]}
 */
function moreOf(found, frame) {
  const [first] = found;
  const ties = found.filter(({ tieOff }) => tieOff).map(({ side }) => side);
  return [
    first.passes.length > 1 ? "shared" : "",
    ties.length ? (ties.length < found.length ? `tie-off ${ties[0]}` : "tie-off") : "",
    first.strip !== null ? (frame?.strips[first.strip]?.name ?? "strip") : "",
    first.twin !== null ? "twin" : "",
  ].filter(Boolean);
}

/** @param {string} word */
export function passWords(word) {
  if (word === ".") return "no string";
  if (word === "x") return "not drilled";
  return word
    .split("+")
    .map((each) => `${each[0] === "m" ? "main" : "cross"} ${each.slice(1)}`)
    .join(" and ");
}
