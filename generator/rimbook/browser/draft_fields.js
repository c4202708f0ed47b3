/** Fields of a draft: each knows where in the draft it stands, and shows what is wrong there. */

import { el, fill } from "./dom.js";
import { holds, isMapping, valueAt } from "./draft_written.js";

/** @typedef {import("./draft_problem.js").Problem} Problem */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */
/** @typedef {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} Control */

/**
 * @typedef {object} Field
 * @property {HTMLElement} element
 * @property {Control} control
 * @property {() => Path} path
 * @property {(draft: Draft) => void} show
 * @property {(problems: readonly Problem[]) => void} mark
 */

/**
 * `get` gives the text in the field, `set` the draft with what was typed.
 * @typedef {object} Asked
 * @property {string} label
 * @property {string} [hint]
 * @property {Path | (() => Path)} path one that may change is asked for each time
 * @property {"text" | "number" | "note"} [kind]
 * @property {readonly (readonly [string, string])[]} [choices] value and words
 * @property {string} [list] id of a list to choose from
 * @property {(draft: Draft) => string} [get]
 * @property {(draft: Draft, typed: string) => Draft} [set]
 * @property {(draft: Draft) => boolean} [isWanted] whether it is shown at all
 * @property {(draft: Draft) => string} [aside] a word on what stands in it
 */

let count = 0;

/**
 * @param {DraftStore} store
 * @param {Asked} asked
 * @returns {Field}
 */
export function field(store, asked) {
  const { label, hint, kind = "text", choices, list } = asked;
  const given = asked.path;
  const path = typeof given === "function" ? given : () => given;
  const id = `rb-draft-${++count}`;
  const common = { id, autocomplete: "off", "aria-describedby": `${id}-hint ${id}-wrong` };
  const control = choices
    ? el("select", common, ...choices.map(([value, words]) => el("option", { value }, words)))
    : kind === "note"
      ? el("textarea", { ...common, rows: "4" })
      : el("input", { ...common, type: "text", spellcheck: "false", ...(kind === "number" ? { inputmode: "decimal" } : {}), ...(list ? { list } : {}) });
  const aside = el("span", { class: "rb-draft-aside" });
  const wrong = el("p", { class: "rb-draft-wrong", id: `${id}-wrong` });
  const element = el(
    "div",
    { class: `rb-draft-field rb-draft-field--${kind}` },
    el("label", { for: id }, label),
    control,
    el("p", { class: "rb-draft-hint", id: `${id}-hint` }, hint ?? "", aside),
    wrong,
  );
  const get = asked.get ?? ((draft) => textOf(valueAt(draft, path())));
  const read = kind === "number" ? readNumber : (/** @type {string} */ typed) => typed || undefined;
  const set = asked.set ?? ((draft, typed) => withAt(draft, path(), read(typed)));
  control.addEventListener("input", () => store.change({ draft: set(store.draft, control.value) }, `field ${id}`));
  control.addEventListener("change", () => {
    control.value = get(store.draft);
    store.pause();
  });
  return {
    element,
    control,
    path,
    show(draft) {
      element.hidden = asked.isWanted ? !asked.isWanted(draft) : false;
      if (control !== document.activeElement || choices) control.value = get(draft);
      aside.textContent = asked.aside?.(draft) ?? "";
    },
    mark(problems) {
      const own = problems.filter((problem) => problem.severity !== "note" && begins(problem.path, path()));
      control.setAttribute("aria-invalid", String(own.some(({ severity }) => severity === "error")));
      fill(wrong, ...own.slice(0, 2).map(({ message }) => el("span", {}, message)));
    },
  };
}

/**
 * @param {Path} path
 * @param {Path} start
 * @returns {boolean} whether one path is the other, or leads further
 */
export function begins(path, start) {
  return start.length <= path.length && start.every((step, index) => step === path[index]);
}

/**
 * A number as people type it, with point or comma; nothing for nothing, and any other text as it is, so that
 * the check can say what is wrong with it.
 * @param {string} typed
 * @returns {number | string | undefined}
 */
export function readNumber(typed) {
  const text = typed.trim().replace(",", ".");
  if (!text) return undefined;
  return /^-?(\d{1,6}(\.\d{0,4})?|\.\d{1,4})$/.test(text) ? Number(text) : typed.trim();
}

/** @param {unknown} value */
export function textOf(value) {
  return value === undefined || value === null || value === "unknown" || typeof value === "object" ? "" : String(value);
}

/**
 * The draft with a value at a path; without one the key goes, and what is left empty goes with it.
 * @param {any} draft
 * @param {Path} path
 * @param {unknown} value
 * @returns {any}
 */
export function withAt(draft, path, value) {
  const [step, ...rest] = path;
  const inside = holds(draft, step) ? (Array.isArray(draft) ? draft[Number(step)] : draft[step]) : undefined;
  const next = rest.length ? withAt(inside ?? (typeof rest[0] === "number" ? [] : {}), rest, value) : value;
  if (typeof step === "number") {
    const list = [...(Array.isArray(draft) ? draft : [])];
    while (list.length < step) list.push("");
    list[step] = next ?? "";
    return list.every((each) => each === "") ? undefined : list;
  }
  const { [step]: _, ...others } = isMapping(draft) ? draft : {};
  const isNothing = next === undefined || (isMapping(next) && Object.keys(next).length === 0);
  return isNothing ? others : { ...draft, [step]: next };
}
