/** The form of a measured hole: it holds what the reader typed, and says what is wrong field by field. */

import { el } from "./dom.js";
import { MOST_CHARACTERS } from "./fits_address.js";
import { FIELDS } from "./fits_hole.js";
import { number } from "./millimetres.js";

/** @typedef {import("./fits_hole.js").Field} Field */
/** @typedef {import("./fits_hole.js").Typed} Typed */
/** @typedef {import("./fits_hole.js").Problems} Problems */

/**
 * @typedef {object} Form
 * @property {HTMLFormElement} element
 * @property {() => Typed} read
 * @property {(typed: Typed) => void} write
 * @property {(problems: Problems) => void} mark
 * @property {(field: Field) => void} focus
 */

/**
 * @param {Record<string, number[]>} usual string diameters by sport, thinnest first
 * @returns {Form}
 */
export function fitsForm(usual) {
  const sports = Object.entries(usual).map(
    ([sport, mm]) => `${sport} ${number(mm[0] ?? 0)} to ${number(mm.at(-1) ?? 0)}`,
  );
  /** @type {Record<Field, [string, string]>} */
  const labels = {
    bore: ["Bore of the hole, mm", "The drilled hole with its old part out."],
    depth: ["Rim depth at the hole, mm", "From the seat of the flange to the inside edge."],
    strings: ["How many strings", "2 in a shared hole; one more at a tie-off; 0 for none."],
    string: ["String diameter, mm", `Two that differ: 0.62 + 0.70. Usual: ${sports.join(", ")}.`],
    step: ["Bore read in steps of, mm", "Optional: how finely pins or calliper read, such as 0.05."],
  };
  const inputs = byField((field) =>
    el("input", {
      id: `rb-fits-${field}`,
      name: field,
      type: "text",
      inputmode: field === "strings" ? "numeric" : field === "string" ? "text" : "decimal",
      maxlength: String(MOST_CHARACTERS),
      autocomplete: "off",
      spellcheck: "false",
      enterkeyhint: "go",
      "aria-describedby": `rb-fits-${field}-hint rb-fits-${field}-wrong`,
    }),
  );
  const wrong = byField((field) => el("p", { id: `rb-fits-${field}-wrong`, class: "rb-fits-wrong", hidden: true }));
  const rows = FIELDS.map((field) =>
    el(
      "div",
      { class: "rb-fits-field" },
      el("label", { for: inputs[field].id }, labels[field][0]),
      inputs[field],
      wrong[field],
      el("p", { id: `rb-fits-${field}-hint`, class: "rb-fits-hint" }, labels[field][1]),
    ),
  );
  const element = el(
    "form",
    { class: "rb-fits-form", "aria-label": "The hole as measured", novalidate: true },
    el("div", { class: "rb-fits-fields" }, ...rows),
    el(
      "p",
      {},
      el("button", { type: "submit", class: "rb-button" }, "Show the parts"),
      el("button", { type: "reset", class: "rb-button" }, "Clear all"),
    ),
  );
  return {
    element,
    read: () => byField((field) => inputs[field].value),
    write(typed) {
      for (const field of FIELDS) inputs[field].value = typed[field];
    },
    mark(problems) {
      for (const field of FIELDS) {
        const says = problems[field] ?? "";
        wrong[field].textContent = says;
        wrong[field].hidden = !says;
        if (says) inputs[field].setAttribute("aria-invalid", "true");
        else inputs[field].removeAttribute("aria-invalid");
      }
    },
    focus: (field) => inputs[field].focus(),
  };
}

/**
 * @template Value
 * @param {(field: Field) => Value} make
 * @returns {Record<Field, Value>}
 */
function byField(make) {
  return /** @type {Record<Field, Value>} */ (Object.fromEntries(FIELDS.map((field) => [field, make(field)])));
}
