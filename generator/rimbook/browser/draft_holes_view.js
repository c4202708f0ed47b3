/** The second part of the page: the drawing beside the list of holes, and what can be done there. */

import { el, fill } from "./dom.js";
import { setLeft, sidesOf } from "./draft_edit.js";
import { drawFace } from "./draft_face.js";
import { readNumber } from "./draft_fields.js";
import { Holes } from "./draft_holes.js";
import { CHANGES, MODE_KEYS } from "./draft_keys.js";
import { bedOf } from "./draft_places.js";
import { holeRows, passWords } from "./draft_rows.js";
import { markOf, svg } from "./draft_svg.js";
import { readPlace } from "./draft_walk.js";

/** @typedef {import("./draft_edit.js").Which} Which */
/** @typedef {import("./draft_keys.js").Mode} Mode */
/** @typedef {import("./draft_problem.js").DraftPart} DraftPart */
/** @typedef {import("./draft_settle.js").DraftFrame} DraftFrame */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_svg.js").Marks} Marks */
/** @typedef {import("./draft_written.js").Draft} Draft */

/** @type {Record<Mode, {name: string, help: string}>} */
const MODES = {
  strings: { name: "Strings", help: "Type what passes: m9, c1, m9+c1, a dot for no string, x for a place that is not drilled. Enter goes on." },
  bores: { name: "Bores", help: "One key a hole, and the next one is ready. Shift and arrows mark a run that takes one key. u is unknown, = another bore." },
  depths: { name: "Rim depths", help: "One key a hole, as with bores. u is unknown, = another depth." },
  places: { name: "Places", help: "Type the millimetres along the rim from the middle of the head, then Enter. u is unknown." },
};

/**
 * @typedef {object} Host
 * @property {(says: string, isUrgent?: boolean) => void} say
 * @property {Record<string, number[]>} typical
 * @property {Marks} marks
 * @property {() => Record<string, DraftPart>} parts
 */

/**
 * @param {DraftStore} store
 * @param {Host} host
 */
export function holesView(store, host) {
  let frame = /** @type {DraftFrame | null} */ (null);
  let face = /** @type {import("./draft_face.js").Face | null} */ (null);
  // While a walk is half right, strings keep the spacing that they had.
  let spacing = /** @type {[number, number] | null} */ (null);
  let wrong = /** @type {ReadonlySet<string>} */ (new Set());
  const refresh = () => {
    holes.settle();
    rows.show(frame, wrong);
    face?.ring(holes.chosen, `${sidesOf(holes.which)[0]}${holes.cursor}`);
    showTools();
  };
  const holes = new Holes(store, host.typical, host.say, refresh);
  const rows = holeRows(holes);
  const drawing = el("div", { class: "rb-draft-face" });
  const stale = el("p", { class: "rb-draft-stale", hidden: true }, "The drawing waits until the map can be read again: see the problems.");
  drawing.addEventListener("click", (event) => {
    const hole = face?.holeAt(event.clientX, event.clientY);
    if (!hole) return;
    if (holes.which !== "both") holes.which = hole.startsWith("R") ? "R" : "L";
    holes.go(Number(hole.slice(1)), event.shiftKey);
    rows.element.focus({ preventScroll: true });
  });
  rows.element.addEventListener("keydown", (event) => {
    if (event.key !== "=" || !["bores", "depths"].includes(holes.mode)) return;
    event.preventDefault();
    other.focus();
  });

  const modes = choice("Keys write", Object.entries(MODES).map(([mode, { name }]) => [mode, name]), (mode) => {
    holes.act({ do: "mode", mode: /** @type {Mode} */ (mode) });
    rows.element.focus({ preventScroll: true });
  });
  const sides = choice("For", [["both", "both sides"], ["R", "the right side"], ["L", "the left side"]], (which) => holes.turn(/** @type {Which} */ (which)));
  const differs = el("input", { type: "checkbox", id: "rb-draft-differs" });
  differs.addEventListener("change", () => {
    store.change({ draft: setLeft(store.draft, differs.checked) });
    holes.turn(differs.checked ? "L" : "both");
    host.say(differs.checked ? "The left side has a walk of its own now, at first like the right one." : "Both sides have one walk.");
  });
  const here = el("p", { class: "rb-draft-now" });
  const help = el("p", { class: "rb-draft-help", id: "rb-draft-keys" });
  const typing = el("input", { type: "text", id: "rb-draft-typing", autocomplete: "off", autocapitalize: "none", spellcheck: "false" });
  const typingLabel = el("label", { for: "rb-draft-typing" });
  typing.addEventListener("input", () => {
    const text = typing.value.trim().toLowerCase().replace(/\s*\+\s*/g, "+");
    if (holes.mode === "strings" ? typeof readPlace(text) !== "string" : true) holes.type(text);
  });
  typing.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    holes.act({ do: "next" });
    typing.select();
  });
  const pens = el("div", { class: "rb-draft-pens", role: "group", "aria-label": "What a key writes" });
  const other = el("input", { type: "text", id: "rb-draft-other", inputmode: "decimal", autocomplete: "off" });
  const otherBox = el("form", { class: "rb-draft-other" }, el("label", { for: "rb-draft-other" }, "= another, mm"), other, el("button", { type: "submit", class: "rb-button" }, "Write"));
  otherBox.addEventListener("submit", (event) => {
    event.preventDefault();
    const length = readNumber(other.value);
    if (!(typeof length === "number" && length > 0 && length <= 1000)) return host.say(`“${other.value.trim()}” is no length in mm.`, true);
    other.value = "";
    holes.add(length);
    rows.element.focus({ preventScroll: true });
  });
  const changes = el("div", { class: "rb-draft-changes", role: "group", "aria-label": "Change the walk" });
  fill(changes, ...CHANGES.map(([name, words, key]) => tool(words, key, () => holes.act({ do: "change", name }))));
  const steps = el("div", { class: "rb-draft-changes" }, tool("Hole before", "↑", () => holes.act({ do: "move", by: -1, extends: false })), tool("Next hole", "↓", () => holes.act({ do: "move", by: 1, extends: false })));

  const showTools = () => {
    const { mode, which, cursor, words } = holes;
    modes.show(mode);
    sides.show(which, store.draft["left"] ? ["both"] : []);
    differs.checked = Boolean(store.draft["left"]);
    help.textContent = `${MODES[mode].help} Escape leads back to this list from any field below.`;
    const word = words[cursor - 1] ?? "";
    const many = holes.numbers.length > 1 ? `${holes.chosenWords.join(" ")} are marked` : `${which === "both" ? cursor : which + cursor}: ${passWords(word)}`;
    here.textContent = words.length ? many : "";
    const isTyped = mode === "strings" || mode === "places";
    typing.hidden = typingLabel.hidden = !isTyped;
    pens.hidden = otherBox.hidden = isTyped;
    typingLabel.textContent = mode === "places" ? "Millimetres along the rim" : "What passes here";
    if (typing !== document.activeElement || !holes.typed) typing.value = holes.typed || (mode === "strings" ? word : "");
    fill(pens, ...penButtons(holes, host.marks));
  };
  return {
    holes,
    element: el(
      "div",
      { class: "rb-draft-work" },
      el("div", { class: "rb-draft-seen" }, drawing, stale),
      el(
        "div",
        { class: "rb-draft-tools" },
        modes.element,
        sides.element,
        el("p", { class: "rb-draft-check" }, differs, el("label", { for: "rb-draft-differs" }, "The left side differs")),
        help,
        el("div", { class: "rb-draft-pen" }, here, el("div", { class: "rb-draft-typing" }, typingLabel, typing), pens, otherBox),
        rows.element,
        steps,
        changes,
      ),
    ),
    focus: () => rows.element.focus({ preventScroll: true }),
    /**
     * @param {DraftFrame | null} found null where the draft cannot be read: the last drawing stays
     * @param {boolean} isSound whether the strings lie where they should
     * @param {ReadonlySet<string>} holesWrong
     */
    show(found, isSound, holesWrong) {
      wrong = holesWrong;
      stale.hidden = found !== null;
      if (found) {
        frame = found;
        if (isSound || !spacing) spacing = spacingOf(found);
        face = drawFace(isSound ? found : { ...found, spacing }, orderOf(store.draft), host.marks, host.parts());
        fill(drawing, face.drawing);
      }
      refresh();
    },
  };
}

/**
 * @param {DraftFrame} frame
 * @returns {[number, number]}
 */
function spacingOf(frame) {
  const { mainsMm, crossesMm } = bedOf(frame);
  return [mainsMm, crossesMm];
}

/** @param {Draft} draft */
function orderOf({ stringing }) {
  return {
    mainsStart: stringing?.mains_start === "throat" ? /** @type {const} */ ("throat") : /** @type {const} */ ("head"),
    crossesStart: stringing?.crosses_start === "throat" ? /** @type {const} */ ("throat") : /** @type {const} */ ("head"),
    firstCross: stringing?.first_cross === "L" ? /** @type {const} */ ("L") : /** @type {const} */ ("R"),
  };
}

/**
 * @param {Holes} holes
 * @param {Marks} marks
 */
function penButtons(holes, marks) {
  const picture = (/** @type {number | null} */ bore) =>
    svg("svg", { viewBox: "-8 -8 16 16", width: 18, height: 18, "aria-hidden": "true", fill: "none" }, ...markOf({ drilled: true, passes: [], bore }, 5.5, marks));
  const isBore = holes.mode === "bores";
  const pens = holes.pens.map((length, index) =>
    tool([isBore && picture(length), `${tenths(length)} mm`], String(index + 1), () => holes.act({ do: "pen", index })),
  );
  return [...pens, tool([isBore && picture(null), "unknown"], "u", () => holes.act({ do: "unknown" }))];
}

/** @param {number} length such as 2, written as 2.0 */
function tenths(length) {
  return Number.isInteger(length) ? length.toFixed(1) : String(length);
}

/**
 * @param {string | import("./dom.js").Child[]} words
 * @param {string} key
 * @param {() => void} go
 */
function tool(words, key, go) {
  const inside = Array.isArray(words) ? words : [words];
  const element = el("button", { type: "button", class: "rb-button rb-draft-tool" }, el("kbd", {}, key), ...inside);
  element.addEventListener("click", go);
  return element;
}

/**
 * One of a few, as radio buttons.
 * @param {string} legend
 * @param {readonly (readonly string[])[]} options value and words
 * @param {(value: string) => void} onChosen
 */
function choice(legend, options, onChosen) {
  const name = `rb-draft-${legend.toLowerCase().replace(" ", "-")}`;
  const keys = Object.fromEntries(Object.entries(MODE_KEYS).map(([key, mode]) => [mode, key]));
  const inputs = options.map(([value]) => el("input", { type: "radio", name, value }));
  for (const input of inputs) input.addEventListener("change", () => onChosen(input.value));
  const labels = options.map(([value, words], index) => el("label", {}, inputs[index], words, keys[value] !== undefined && el("kbd", {}, keys[value])));
  return {
    element: el("fieldset", { class: "rb-draft-choice" }, el("legend", {}, legend), ...labels),
    /**
     * @param {string} value
     * @param {readonly string[]} [barred]
     */
    show(value, barred = []) {
      for (const input of inputs) {
        input.checked = input.value === value;
        input.disabled = barred.includes(input.value);
      }
    },
  };
}
