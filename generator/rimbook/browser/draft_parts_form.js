/** What sits in the holes: a part for all, for a bore, for some holes, and the strips. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { field } from "./draft_fields.js";
import { pairs } from "./draft_yaml.js";

/** @typedef {import("./draft_fields.js").Field} Field */
/** @typedef {import("./draft_problem.js").DraftPart} DraftPart */
/** @typedef {import("./draft_store.js").DraftStore} DraftStore */
/** @typedef {import("./draft_written.js").Draft} Draft */
/** @typedef {import("./draft_written.js").Path} Path */

export const PART_LIST = "rb-draft-parts";
const UNKNOWN = "unknown";

/**
 * @typedef {object} Host
 * @property {() => Record<string, DraftPart>} parts
 * @property {() => readonly number[]} bores in use
 * @property {() => string[]} chosen the holes marked in the list, as selectors
 */

/**
 * @param {DraftStore} store
 * @param {Host} host
 */
export function partsForm(store, host) {
  /** @type {Record<string, {of: string, fields: Field[]}>} */
  const drawn = { bores: { of: "", fields: [] }, own: { of: "", fields: [] }, strips: { of: "", fields: [] } };
  const byBore = el("div", { class: "rb-draft-fields" });
  const own = el("div", { class: "rb-draft-rows" });
  const strips = el("div", { class: "rb-draft-rows" });
  const addOwn = button("Give the chosen holes a part of their own", () => {
    const taken = new Set(lines(store.draft).map(([key]) => key));
    const words = host.chosen().filter((word) => !taken.has(word));
    if (words.length) store.change({ draft: { ...store.draft, fitted: [...lines(store.draft), ...words.map((word) => [word, UNKNOWN])] } });
    focusLast(own);
  });
  const addStrip = button("Lay a strip over the chosen holes", () => {
    const more = host.chosen().map((word) => ({ name: "strip", holes: endsOf(word), part: UNKNOWN }));
    store.change({ draft: { ...store.draft, strips: [...(store.draft["strips"] ?? []), ...more] } });
    focusLast(strips);
  });

  /**
   * Rows are made anew only where there are others than before, so that nobody is torn from a field.
   * @param {string} name
   * @param {HTMLElement} place
   * @param {readonly (string | number)[]} of
   * @param {(of: string | number) => {element: HTMLElement, fields: Field[]}} make
   */
  const redraw = (name, place, of, make) => {
    if (drawn[name].of === JSON.stringify(of)) return;
    const rows = of.map(make);
    drawn[name] = { of: JSON.stringify(of), fields: rows.flatMap(({ fields }) => fields) };
    fill(place, ...rows.map(({ element }) => element));
  };
  /** @param {Draft} draft */
  const draw = (draft) => {
    redraw("bores", byBore, ["default", ...boreKeys(draft, host.bores())], (key) => {
      const label = key === "default" ? "Part in most holes" : `Part at bore ${String(key).slice(5)} mm`;
      const one = partField(store, host, label, ["fitted", key]);
      return { element: one.element, fields: [one] };
    });
    redraw("own", own, [...ownLines(draft).keys()], (index) => ownRow(store, host, Number(index)));
    redraw("strips", strips, [...(draft["strips"] ?? []).keys()], (index) => stripRow(store, host, Number(index)));
  };
  return {
    element: el(
      "div",
      {},
      el("p", {}, "Type a part's id or its name; empty is unknown. A bore wins over “most holes”, and holes of their own win over both."),
      byBore,
      el("h3", {}, "Holes with a part of their own, and twins"),
      el("p", {}, "A run of holes and its part: ", el("code", {}, "35-36"), " on both sides, ", el("code", {}, "R9"), " on one. A two-post part fills the holes of its run two by two."),
      own,
      addOwn,
      el("h3", {}, "Moulded strips"),
      el("p", {}, "From the first hole clockwise to the last, as ", el("code", {}, "L6"), " to ", el("code", {}, "R6"), " round the head; bare numbers lay one on each side."),
      strips,
      addStrip,
    ),
    get fields() {
      return Object.values(drawn).flatMap(({ fields }) => fields);
    },
    draw,
  };
}

/** @param {Draft} draft */
function lines(draft) {
  return pairs(draft["fitted"]);
}

/** @param {string} key */
function isHoles(key) {
  return key !== "default" && !key.startsWith("bore ");
}

/**
 * The lines for single holes and runs, and where they stand among all.
 * @param {Draft} draft
 */
function ownLines(draft) {
  return lines(draft).flatMap((line, at) => (isHoles(line[0]) ? [{ line, at }] : []));
}

/**
 * @param {Draft} draft
 * @param {readonly number[]} bores
 * @returns {string[]} keys of the lines by bore: written ones, and those that could be
 */
function boreKeys(draft, bores) {
  const keys = new Set(lines(draft).flatMap(([key]) => (key.startsWith("bore ") ? [key] : [])));
  if (bores.length > 1) for (const bore of bores) keys.add(`bore ${bore}`);
  return [...keys].sort((a, b) => Number(a.slice(5)) - Number(b.slice(5)));
}

/**
 * @param {DraftStore} store
 * @param {Host} host
 * @param {string} label
 * @param {Path | (() => Path)} path
 * @param {{get: (draft: Draft) => string | undefined, set: (draft: Draft, part: string) => Draft}} [at]
 * @returns {Field}
 */
function partField(store, host, label, path, at) {
  const key = Array.isArray(path) ? String(path[1]) : "";
  const get = at?.get ?? ((draft) => lines(draft).find(([each]) => each === key)?.[1]);
  const set = at?.set ?? ((draft, part) => withLine(draft, key, part));
  return field(store, {
    label,
    path,
    list: PART_LIST,
    get: (draft) => (get(draft) === UNKNOWN ? "" : (get(draft) ?? "")),
    set: (draft, typed) => set(draft, idOf(typed, host.parts())),
    aside: (draft) => {
      const part = get(draft);
      if (part === undefined) return "as in most holes";
      return part === UNKNOWN ? "unknown" : (host.parts()[part]?.name ?? "");
    },
  });
}

/**
 * @param {Draft} draft
 * @param {string} key
 * @param {string} part
 * @returns {Draft}
 */
function withLine(draft, key, part) {
  const known = lines(draft);
  const at = known.findIndex(([each]) => each === key);
  if (key.startsWith("bore ") && part === UNKNOWN) return { ...draft, fitted: known.filter(([each]) => each !== key) };
  if (at >= 0) return { ...draft, fitted: known.with(at, [key, part]) };
  const after = known.findLastIndex(([each]) => !isHoles(each)) + 1;
  return { ...draft, fitted: known.toSpliced(after, 0, [key, part]) };
}

/**
 * @param {string} typed
 * @param {Record<string, DraftPart>} parts
 */
function idOf(typed, parts) {
  const word = typed.trim();
  if (!word) return UNKNOWN;
  if (Object.hasOwn(parts, word)) return word;
  return Object.entries(parts).find(([, { name }]) => name.toLowerCase() === word.toLowerCase())?.[0] ?? word;
}

/**
 * @param {DraftStore} store
 * @param {Host} host
 * @param {number} index among such lines
 */
function ownRow(store, host, index) {
  const line = (/** @type {Draft} */ draft) => ownLines(draft)[index]?.line ?? ["", UNKNOWN];
  const change = (/** @type {Draft} */ draft, /** @type {[string, string]} */ next) => ({ ...draft, fitted: lines(draft).with(ownLines(draft)[index].at, next) });
  const path = () => ["fitted", line(store.draft)[0]]; // the key is typed as well
  const holes = field(store, {
    label: "Holes",
    path,
    get: (draft) => line(draft)[0],
    set: (draft, typed) => change(draft, [typed.trim().toUpperCase(), line(draft)[1]]),
  });
  const part = partField(store, host, "Part", path, {
    get: (draft) => line(draft)[1],
    set: (draft, id) => change(draft, [line(draft)[0], id]),
  });
  return row("Remove these holes", [holes, part], () => {
    store.change({ draft: { ...store.draft, fitted: lines(store.draft).toSpliced(ownLines(store.draft)[index].at, 1) } });
  });
}

/**
 * @param {DraftStore} store
 * @param {Host} host
 * @param {number} index
 */
function stripRow(store, host, index) {
  const strip = (/** @type {Draft} */ draft) => draft["strips"]?.[index] ?? { name: "", holes: ["", ""], part: UNKNOWN };
  const change = (/** @type {Draft} */ draft, /** @type {any} */ next) => ({ ...draft, strips: draft["strips"].with(index, { ...strip(draft), ...next }) });
  const end = (/** @type {string} */ label, /** @type {0 | 1} */ at) =>
    field(store, {
      label,
      path: ["strips", index, "holes", at],
      get: (draft) => String(strip(draft).holes[at]),
      set: (draft, typed) => change(draft, { holes: strip(draft).holes.with(at, endOf(typed)) }),
    });
  const fields = [
    field(store, { label: "Called", path: ["strips", index, "name"], get: (draft) => strip(draft).name, set: (draft, name) => change(draft, { name }) }),
    end("First hole", 0),
    end("Last hole", 1),
    partField(store, host, "Part", ["strips", index, "part"], { get: (draft) => strip(draft).part, set: (draft, part) => change(draft, { part }) }),
  ];
  return row("Remove this strip", fields, () => {
    store.change({ draft: { ...store.draft, strips: store.draft["strips"].toSpliced(index, 1) } });
  });
}

/**
 * @param {string} remove
 * @param {Field[]} fields
 * @param {() => void} onRemove
 */
function row(remove, fields, onRemove) {
  return { element: el("div", { class: "rb-draft-row" }, ...fields.map(({ element }) => element), button(remove, onRemove)), fields };
}

/** @param {string} word such as `12-20`, `R6` or `6` */
function endsOf(word) {
  const [first, last = first] = String(word).split("-");
  const ends = [endOf(first), endOf(last)];
  return String(word).startsWith("L") ? ends.reverse() : ends;
}

/** @param {string} typed */
function endOf(typed) {
  const word = typed.trim().toUpperCase();
  return /^[1-9]\d{0,3}$/.test(word) ? Number(word) : word;
}

/** @param {HTMLElement} rows */
function focusLast(rows) {
  const input = rows.lastElementChild?.querySelector("input");
  if (input instanceof HTMLInputElement) {
    input.focus();
    input.select();
  }
}
