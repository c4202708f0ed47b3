/** The first part of the page: what the frame is, and the walk that is proposed for it. */

import { el } from "./dom.js";
import { field, textOf } from "./draft_fields.js";
import { propose } from "./draft_propose.js";
import { writePlace } from "./draft_walk.js";

/** @typedef {import("./draft_fields.js").Field} Field */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_written.js").Draft} Draft */

const LARGEST_MM = 500;
const SPORTS = /** @type {const} */ (["badminton", "squash", "tennis", "racquetball"]);
const OUTLINES = /** @type {const} */ ([
  ["ellipse", "ellipse"],
  ["superellipse", "ellipse with squarer or leaner shoulders"],
  ["teardrop", "teardrop"],
  ["points", "measured points"],
]);

/**
 * @param {DraftStore} store
 * @param {(says: string, isUrgent?: boolean) => void} say
 * @param {number} smallestMm a head has at least, each way
 * @param {() => void} onProposed
 */
export function frameForm(store, say, smallestMm, onProposed) {
  const isPoints = (/** @type {Draft} */ { head }) => head?.outline === "points";
  const fields = [
    field(store, { label: "Name", hint: "As printed on the frame.", path: ["name"] }),
    field(store, { label: "Maker", path: ["maker"] }),
    field(store, { label: "Sport", path: ["sport"], choices: SPORTS.map((sport) => [sport, sport]) }),
    field(store, { label: "Mains", hint: "On both halves together.", path: ["mains"], kind: "number" }),
    field(store, { label: "Crosses", path: ["crosses"], kind: "number" }),
    field(store, { label: "Width of the line of holes, mm", hint: "From hole to hole.", path: ["head", "inside_mm", 0], kind: "number", isWanted: (draft) => !isPoints(draft) }),
    field(store, { label: "Height of the line of holes, mm", path: ["head", "inside_mm", 1], kind: "number", isWanted: (draft) => !isPoints(draft) }),
    field(store, {
      label: "Outline",
      path: ["head", "outline"],
      choices: OUTLINES,
      set: (draft, typed) => {
        const { exponent, taper, ...head } = draft["head"] ?? {};
        if (typed === "superellipse") return { ...draft, head: { ...head, outline: typed, exponent: exponent ?? 2.2 } };
        if (typed === "teardrop") return { ...draft, head: { ...head, outline: typed, taper: taper ?? 0.3 } };
        return { ...draft, head: { ...head, outline: typed } };
      },
    }),
    field(store, { label: "Exponent", hint: "2 is an ellipse, more is squarer: 2.1 to 2.5 is usual.", path: ["head", "exponent"], kind: "number", isWanted: ({ head }) => head?.outline === "superellipse" }),
    field(store, { label: "Taper", hint: "0 is an ellipse, 1 runs to a point at the throat.", path: ["head", "taper"], kind: "number", isWanted: ({ head }) => head?.outline === "teardrop" }),
  ];
  const counted = el("input", { type: "text", id: "rb-draft-counted", inputmode: "numeric", autocomplete: "off", "aria-describedby": "rb-draft-counted-hint" });
  const button = el("button", { type: "submit", class: "rb-button rb-draft-main" }, "Propose a walk");
  const form = el(
    "form",
    { class: "rb-draft-form", novalidate: true },
    el("div", { class: "rb-draft-fields" }, ...fields.map(({ element }) => element)),
    el(
      "div",
      { class: "rb-draft-fields" },
      el(
        "div",
        { class: "rb-draft-field" },
        el("label", { for: "rb-draft-counted" }, "Holes counted"),
        counted,
        el("p", { class: "rb-draft-hint", id: "rb-draft-counted-hint" }, "In the whole frame, if you counted: then so many strings share a hole as that needs."),
      ),
      el("div", { class: "rb-draft-field rb-draft-go" }, button),
    ),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const asked = readAsked(store.draft, counted.value, smallestMm);
    if ("problem" in asked) {
      say(asked.problem, true);
      const wrong = fields.find(({ path }) => JSON.stringify(path()) === JSON.stringify(asked.path));
      (wrong?.control ?? counted).focus();
      return;
    }
    const places = propose(asked.head, asked.mains, asked.crosses, asked.holes);
    const { left, places_mm, ...rest } = store.draft;
    store.change({ draft: { ...rest, walk: places.map(writePlace).join(" ") } });
    const shared = places.filter(({ passes }) => passes.length > 1).length;
    say(`A walk of ${places.length} places a side is proposed, ${2 * places.length} holes in all, ${2 * shared} of them shared. It is a start: put it right hole by hole.`);
    onProposed();
  });
  return {
    element: form,
    fields,
    /** @param {Draft} draft */
    show(draft) {
      button.textContent = draft["walk"] ? "Propose the walk anew" : "Propose a walk";
      button.disabled = isPoints(draft);
      for (const option of fields[7].control.querySelectorAll("option")) option.hidden = option.value === "points" && !isPoints(draft);
    },
  };
}

/**
 * @param {Draft} draft
 * @param {string} counted
 * @param {number} smallestMm
 * @returns {{head: import("./draft_outline.js").Head, mains: number, crosses: number, holes: number | null}
 *   | {problem: string, path: (string | number)[] | null}}
 */
function readAsked(draft, counted, smallestMm) {
  const { mains, crosses, head } = draft;
  const wrong = (/** @type {string} */ problem, /** @type {(string | number)[] | null} */ path) => ({ problem, path });
  for (const [key, words] of [["name", "the frame's name"], ["maker", "who makes it"]]) {
    if (!textOf(draft[key]).trim()) return wrong(`Say ${words} first.`, [key]);
  }
  const isCount = (/** @type {unknown} */ value, /** @type {number} */ least) => Number.isInteger(value) && Number(value) >= least && Number(value) <= 60;
  if (!isCount(mains, 2)) return wrong(`${said(mains)} mains will not do: expected an even number from 2 to 60.`, ["mains"]);
  if (mains % 2) return wrong(`${mains} mains are not even: each half has as many as the other.`, ["mains"]);
  if (!isCount(crosses, 1)) return wrong(`${said(crosses)} crosses will not do: expected a number from 1 to 60.`, ["crosses"]);
  for (const [index, name] of ["width", "height"].entries()) {
    const side = head?.inside_mm?.[index];
    if (!(typeof side === "number" && side >= smallestMm && side <= LARGEST_MM)) {
      return wrong(`${said(side)} is no ${name} of a head: expected ${smallestMm} to ${LARGEST_MM} mm.`, ["head", "inside_mm", index]);
    }
  }
  const inRange = (/** @type {string} */ key, /** @type {number} */ least, /** @type {number} */ most) => typeof head[key] === "number" && head[key] >= least && head[key] <= most;
  if (head.outline === "superellipse" && !inRange("exponent", 1.5, 6)) return wrong(`The exponent ${said(head.exponent)} is out of range: expected 1.5 to 6.`, ["head", "exponent"]);
  if (head.outline === "teardrop" && !inRange("taper", 0, 1)) return wrong(`The taper ${said(head.taper)} is out of range: expected 0 to 1.`, ["head", "taper"]);
  const holes = counted.trim() ? Number(counted) : null;
  if (holes !== null && !(Number.isInteger(holes) && holes > 0 && holes < 400)) return wrong(`“${counted.trim()}” is no count of holes.`, null);
  const [width, height] = head.inside_mm;
  return { head: { outline: head.outline, width, height, exponent: head.exponent ?? null, taper: head.taper ?? null, points: [] }, mains, crosses, holes };
}

/** @param {unknown} value */
function said(value) {
  return typeof value === "number" ? String(value) : textOf(value) ? `“${textOf(value)}”` : "Nothing";
}
