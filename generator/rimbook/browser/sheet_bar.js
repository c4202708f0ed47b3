/** The tools of the bench sheet, within reach of a thumb: what was seen, rows, steps, and the way back. */

import { el } from "./dom.js";
import { loneSign } from "./sheet_sign.js";
import { EMPTY, mirror, restIsSound, SEEN } from "./sheet_state.js";
import { SEEN_WORDS } from "./sheet_words.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./sheet_marker.js").Marker} Marker */
/** @typedef {import("./sheet_store.js").Store} Store */

const TURNS = [0, 1, 2, 3, 4];

/**
 * @param {Store} store
 * @param {Marker} marker
 * @param {(isLarge: boolean) => void} enlarge
 */
export function toolBar(store, marker, enlarge) {
  const said = el("p", { class: "rb-bar-said", role: "status" });
  const pens = [...SEEN, /** @type {const} */ ("none")].map((pen) => {
    const word = pen === "none" ? "no mark" : pen === "low" ? "sits low" : SEEN_WORDS[pen];
    const picture = pen === "none" ? el("span", { class: "rb-bar-none", "aria-hidden": "true" }, "⌫") : loneSign({ seen: pen, turns: 0 });
    return { pen, button: tool([picture, word], () => marker.press(pen)) };
  });
  const turns = TURNS.map((count) => ({ count, button: tool([String(count)], () => marker.turn(count), `turned by ${counted(count, "quarter")}`) }));
  const turnRow = el("div", { class: "rb-bar-row rb-bar-turns", role: "group", "aria-label": "Quarter turns it has had" }, el("span", {}, "Quarter turns it has had"), ...turns.map(({ button }) => button));
  const sweepTool = tool(["Row"], () => {
    const { isSweeping } = marker.hand();
    marker.hold({ isSweeping: !isSweeping, isStepping: false, from: null, said: isSweeping ? "" : "Tap the first hole of a row and then the last, or draw a finger along it." });
  });
  const undoTool = tool(["Undo"], () => undone(store.undo, "Undone."));
  const redoTool = tool(["Redo"], () => undone(store.redo, "Done again."));
  const more = moreTools(store, marker, enlarge);
  const moreTool = tool(["More"], () => {
    more.hidden = !more.hidden;
    moreTool.setAttribute("aria-expanded", String(!more.hidden));
  });
  moreTool.setAttribute("aria-expanded", "false");
  /**
   * @param {() => void} go
   * @param {string} words
   */
  function undone(go, words) {
    go();
    marker.hold({ from: null, row: [], said: words });
  }

  const bar = el(
    "div",
    { class: "rb-bar", role: "group", "aria-label": "Marking tools" },
    said,
    turnRow,
    el("div", { class: "rb-bar-row rb-bar-pens" }, ...pens.map(({ button }) => button)),
    el(
      "div",
      { class: "rb-bar-row" },
      tool(["◀"], () => marker.step(-1), "hole before"),
      tool(["▶"], () => marker.step(1), "next hole"),
      tool(["Same"], () => marker.same(), "same as the last"),
      sweepTool,
      undoTool,
      redoTool,
      moreTool,
    ),
    more,
  );

  marker.listen(({ pen, turns: had, isSweeping, isStepping, said: words }) => {
    for (const each of pens) each.button.setAttribute("aria-pressed", String(each.pen === pen));
    for (const each of turns) each.button.setAttribute("aria-pressed", String(each.count === had));
    sweepTool.setAttribute("aria-pressed", String(isSweeping));
    turnRow.hidden = pen !== "grooved" && !isStepping;
    if (said.textContent !== words) said.textContent = words || hint(pen, isStepping);
  });
  store.watch(() => {
    undoTool.disabled = !store.canUndo();
    redoTool.disabled = !store.canRedo();
  });
  return bar;
}

/**
 * @param {import("./sheet_marker.js").Hand["pen"]} pen
 * @param {boolean} isStepping
 */
function hint(pen, isStepping) {
  if (isStepping) return "What is at this hole? The next one follows.";
  return pen ? "Now tap the holes." : "Choose what you see, then tap the holes; or step from hole to hole.";
}

/**
 * What concerns the whole frame at once.
 * @param {Store} store
 * @param {Marker} marker
 * @param {(isLarge: boolean) => void} enlarge
 */
function moreTools(store, marker, enlarge) {
  const copy = (/** @type {"R" | "L"} */ from) => {
    const { sheet, without } = mirror(store.sheet(), marker.order, from);
    const [one, other] = from === "R" ? ["right", "left"] : ["left", "right"];
    const rest = without.length ? ` Nothing faces ${listed(without)}.` : "";
    marker.change(sheet, `The marks of the ${one} side are on the ${other} as well.${rest}`);
  };
  const large = tool(["Larger drawings"], () => {
    const isLarge = large.getAttribute("aria-pressed") !== "true";
    large.setAttribute("aria-pressed", String(isLarge));
    enlarge(isLarge);
  });
  large.setAttribute("aria-pressed", "false");
  const clear = () => {
    const blank = { ...store.sheet(), marks: {}, doubts: [], checks: EMPTY.checks };
    marker.change(blank, "The sheet is blank. Undo brings it back.");
  };
  return el(
    "div",
    { class: "rb-bar-row rb-bar-more", hidden: true },
    tool(["All others are sound"], () => marker.change(restIsSound(store.sheet(), marker.order), "All other holes are sound.")),
    tool(["Right side to left"], () => copy("R")),
    tool(["Left side to right"], () => copy("L")),
    large,
    tool(["Clear the sheet"], clear),
  );
}

/**
 * @param {(Node | string)[]} content
 * @param {() => void} act
 * @param {string} [label] for those who do not see the sign
 */
function tool(content, act, label) {
  const button = el("button", { type: "button", class: "rb-tool" }, ...content);
  if (label) button.setAttribute("aria-label", label);
  button.addEventListener("click", act);
  return button;
}
