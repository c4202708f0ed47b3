/**
 * The finder in a page.
 *
 * `<div data-rb-finder data-rb-root="../">what a reader without JavaScript gets</div>` becomes the finder;
 * `data-rb-root` is the way to the root of the site. Links elsewhere may carry a search:
 * `finder/index.html#part=barrel-27-short`, with the keys q, sport, maker, bore, part, pattern, holes, shared.
 */

import { holdsSearch, readSearch, writeSearch } from "./address.js";
import { understand } from "./ask.js";
import { el, fill, isTyping } from "./dom.js";
import { FILTER_LABELS, NO_FILTERS, active } from "./filters.js";
import { finderForm } from "./finder_form.js";
import { finderResults } from "./finder_results.js";
import { showHashSoon, showPendingHash } from "./hash.js";
import { unpackFrames, withParts } from "./index_data.js";
import { load } from "./registry.js";
import { search } from "./search.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./index_data.js").Index} Index */
/** @typedef {import("./address.js").Search} Search */

const FRAMES = "data/finder.js";
const PARTS = "data/finder-parts.js";
const EXAMPLES = ["76 holes, shared at 9 and 13", "16x19", "2.7", "twin"];

/**
 * A host with `data-rb-quiet` lists nothing before something is asked for.
 * @param {HTMLElement} host
 */
export function startFinder(host) {
  const root = host.dataset["rbRoot"] ?? "";
  const form = finderForm();
  const results = finderResults(root, () => form.box.focus());
  const said = el(
    "p",
    { class: "rb-finder-said", id: "rb-finder-said", role: "status" },
    "Loading the list of frames …",
  );
  const help = el("div", { class: "rb-finder-help" });
  fill(host, form.element, said, help, results.element);

  /** @type {Index | undefined} */
  let index;
  let trouble = "";

  const answer = () => {
    if (!index) return;
    const wanted = form.read();
    if (wanted.filters.part && !index.parts && !trouble) {
      said.textContent = "Loading the list of parts …";
      return;
    }
    const ask = understand(wanted.typed, index.otherNames);
    const found = search(index, ask, wanted.filters);
    const quiet = host.dataset["rbQuiet"] !== undefined && isOpen(wanted);
    results.show(quiet ? [] : found.hits, index);
    const words = [
      total(found, index, wanted),
      found.bent.length ? `Nothing is spelled just so; this is what comes near: ${listed(found.bent)}.` : "",
      ask.cut ? "The text is long: only its beginning is used." : "",
      trouble,
    ];
    said.textContent = words.filter(Boolean).join(" ");
    fill(help, found.hits.length ? null : advice(index, wanted));
  };

  const answerAndRemember = () => {
    answer();
    showHashSoon(writeSearch(form.read()));
  };

  /** @param {Search} wanted */
  const ask = (wanted) => {
    trouble = "";
    form.write(wanted);
    answerAndRemember();
    form.box.focus();
  };

  /**
   * @param {Index} known
   * @param {Search} wanted
   */
  const advice = (known, wanted) => {
    const set = active(wanted.filters);
    const ways = set.map((name) => ({
      search: { ...wanted, filters: { ...wanted.filters, [name]: "" } },
      text: `without ${FILTER_LABELS[name]} ${wanted.filters[name]}`,
    }));
    if (wanted.typed.trim() && set.length) {
      ways.push({ search: { ...wanted, typed: "" }, text: "without the text" });
      ways.push({ search: { ...wanted, filters: { ...NO_FILTERS } }, text: "without any filter" });
    }
    const helpful = ways
      .map((way) => ({
        ...way,
        count: search(known, understand(way.search.typed, known.otherNames), way.search.filters).hits.length,
      }))
      .filter((way) => way.count);
    if (helpful.length) {
      return el(
        "ul",
        {},
        ...helpful.map((way) =>
          el(
            "li",
            {},
            choice(`${way.text}: ${way.count} found`, () => ask(way.search)),
          ),
        ),
      );
    }
    const examples = EXAMPLES.map((typed) =>
      el(
        "li",
        {},
        choice(typed, () => ask({ typed, filters: { ...NO_FILTERS } })),
      ),
    );
    return el(
      "div",
      {},
      el("p", {}, "A name, a maker, a bore, a part or a plain word finds most. For instance:"),
      el("ul", {}, ...examples),
    );
  };

  const readAddress = () => {
    if (!holdsSearch(location.hash)) return answer();
    const unknown = form.write(readSearch(location.hash));
    trouble = unknown.length
      ? `The address asks for what this book does not have: ${listed(unknown)}. It is left out.`
      : "";
    answer();
  };

  form.element.addEventListener("submit", (event) => event.preventDefault());
  form.element.addEventListener("input", (event) => {
    trouble = "";
    if (index && event.target !== form.box) form.suggestParts(index);
    answerAndRemember();
  });
  form.element.addEventListener("reset", () =>
    setTimeout(() => ask({ typed: "", filters: { ...NO_FILTERS } })),
  );
  form.box.addEventListener("keydown", (event) => {
    if (event.key === "ArrowDown" && results.first()) {
      event.preventDefault();
      results.first()?.focus();
    } else if (event.key === "Enter" && !event.isComposing && form.box.value.trim()) {
      event.preventDefault();
      results.first()?.click();
    } else if (event.key === "Escape" && form.box.value) {
      event.preventDefault();
      ask({ ...form.read(), typed: "" });
    }
  });
  results.element.addEventListener("click", showPendingHash, { capture: true });
  addEventListener("hashchange", readAddress);
  addEventListener("keydown", (event) => focusOnSlash(event, form.box), { capture: true });

  load("finder", root + FRAMES)
    .then((packed) => {
      index = unpackFrames(packed);
      form.offer(index);
      if (form.box.value) answerAndRemember();
      else readAddress();
      return load("finder-parts", root + PARTS);
    })
    .then((packed) => {
      if (index) index = withParts(index, packed);
      if (index) form.suggestParts(index);
      answer();
    })
    .catch((/** @type {Error} */ error) => {
      trouble = `${error.message} Load the page again; offline, open it once while there is a network.`;
      if (index) answer();
      else said.textContent = trouble;
    });
}

/** @param {Search} wanted */
function isOpen(wanted) {
  return !wanted.typed.trim() && !active(wanted.filters).length;
}

/**
 * @param {import("./search.js").Found} found
 * @param {Index} index
 * @param {Search} wanted
 */
function total({ hits, frames }, index, wanted) {
  if (isOpen(wanted))
    return `${counted(index.size, "frame")} in this book.`;
  if (!hits.length) return "Nothing found.";
  const others = hits.length - frames;
  const parts = [
    frames ? counted(frames, "frame") : "",
    others ? counted(others, frames ? "other entry" : "entry", frames ? "other entries" : "entries") : "",
  ];
  return `${listed(parts.filter(Boolean))} found.`;
}

/**
 * @param {string} text
 * @param {() => void} act
 */
function choice(text, act) {
  const button = el("button", { type: "button", class: "rb-button" }, text);
  button.addEventListener("click", act);
  return button;
}

/**
 * The theme listens for the same key: here it means this box.
 * @param {KeyboardEvent} event
 * @param {HTMLInputElement} box
 */
function focusOnSlash(event, box) {
  if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  box.focus();
  box.select();
}
