/** What else a map says of a frame: how it is strung, its sizes, what it is called, and who measured it. */

import { el } from "./dom.js";
import { field, readNumber, textOf } from "./draft_fields.js";
import { entries, isMapping } from "./draft_written.js";

/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_written.js").Draft} Draft */

const ENDS = /** @type {const} */ ([["head", "at the head"], ["throat", "at the throat"]]); // prettier-ignore

/** @param {DraftStore} store */
export function factsForm(store) {
  const strung = [
    field(store, {
      label: "Strung in",
      path: ["stringing", "pieces"],
      choices: [["2", "two pieces of string"], ["1", "one piece"]],
      set: (draft, typed) => ({ ...draft, stringing: { ...draft["stringing"], pieces: Number(typed) } }),
    }),
    field(store, { label: "Centre mains are joined", path: ["stringing", "mains_start"], choices: ENDS }),
    field(store, { label: "Crosses begin", path: ["stringing", "crosses_start"], choices: ENDS }),
    field(store, { label: "First cross is pulled", path: ["stringing", "first_cross"], choices: [["R", "from the right"], ["L", "from the left"]] }),
    field(store, {
      label: "Tie-offs",
      hint: "Holes in which a string ends, as R8 L8 R31 L31. Key t toggles one in the list of holes.",
      path: ["stringing", "tie_offs"],
      get: ({ stringing }) => (stringing?.tie_offs ?? []).join(" "),
      set: (draft, typed) => ({ ...draft, stringing: { ...draft["stringing"], tie_offs: typed.toUpperCase().split(/[\s,]+/).filter(Boolean) } }),
    }),
  ];
  const sizes = [
    field(store, {
      label: "Rim depth of most holes, mm",
      hint: "Through the rim, along a hole; empty is unknown. Other holes: the list of holes, “Rim depths”.",
      path: ["rim_depth_mm"],
      kind: "number",
      get: ({ rim_depth_mm: depth }) => textOf(isMapping(depth) ? entries(depth).find(([key]) => key === "default")?.[1] : depth),
      set: (draft, typed) => {
        const depth = readNumber(typed) ?? "unknown";
        return { ...draft, rim_depth_mm: isMapping(draft["rim_depth_mm"]) ? { ...draft["rim_depth_mm"], default: depth } : depth };
      },
    }),
    field(store, { label: "Whole racket, length in mm", path: ["overall_mm", 0], kind: "number" }),
    field(store, { label: "Whole racket, width in mm", path: ["overall_mm", 1], kind: "number" }),
    field(store, { label: "Between two mains, mm", hint: "If you measured; otherwise it is worked out.", path: ["spacing_mm", "mains"], kind: "number" }),
    field(store, { label: "Between two crosses, mm", path: ["spacing_mm", "crosses"], kind: "number" }),
    field(store, { label: "Tension limit", hint: "As printed: 28 lb, 12.5 kg or 125 N.", path: ["tension_limit"] }),
  ];
  const called = [
    field(store, {
      label: "Other names",
      hint: "With a comma between them.",
      path: ["aliases"],
      get: ({ aliases }) => (aliases ?? []).join(", "),
      set: ({ aliases: _, ...draft }, typed) => {
        const names = typed.split(",").map((name) => name.trim()).filter(Boolean);
        return names.length ? { ...draft, aliases: names } : draft;
      },
    }),
    field(store, { label: "Year", path: ["year"], kind: "number" }),
    field(store, { label: "Version of", hint: "The file name of the sister frame, as plover-75.", path: ["variant_of"] }),
  ];
  const people = [
    field(store, { label: "Measured by", hint: "Your handle: small letters, digits, hyphens.", path: ["measured", "by"] }),
    field(store, { label: "On", hint: "The day, as 2026-11-21.", path: ["measured", "on"] }),
    field(store, { label: "With", hint: "Calliper, pin gauges, ruler …", path: ["measured", "with"] }),
    field(store, { label: "Smallest step of the tool, mm", path: ["measured", "resolution_mm"], kind: "number" }),
    field(store, { label: "Note", hint: "What else a bench should know.", path: ["note"], kind: "note" }),
  ];
  const group = (/** @type {string} */ legend, /** @type {import("./draft_fields.js").Field[]} */ fields) =>
    el("fieldset", { class: "rb-draft-group" }, el("legend", {}, legend), el("div", { class: "rb-draft-fields" }, ...fields.map(({ element }) => element)));
  return {
    strung: group("How it is strung", strung),
    others: el("div", {}, group("Sizes and tension", sizes), group("Names", called), group("Who measured", people)),
    fields: [...strung, ...sizes, ...called, ...people],
  };
}
