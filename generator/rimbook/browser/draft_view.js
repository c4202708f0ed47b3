/**
 * The drafting page.
 *
 * `<div data-rb-draft data-rb-root="../">what a reader without JavaScript gets</div>` becomes all of it.
 * `#map=plover-76` opens a map of the book.
 */

import { el, fill, isTyping } from "./dom.js";
import { clockwise } from "./draft_address.js";
import { lengthsOf } from "./draft_by_hole.js";
import { counts } from "./draft_edit.js";
import { factsForm } from "./draft_facts_form.js";
import { frameForm } from "./draft_frame_form.js";
import { holesView } from "./draft_holes_view.js";
import { askedMap, openMap } from "./draft_open.js";
import { outView } from "./draft_out.js";
import { PART_LIST, partsForm } from "./draft_parts_form.js";
import { photoView } from "./draft_photo_view.js";
import { fieldOf, holeOf, holesIn, problemsView, sumOf } from "./draft_problems_view.js";
import { judged } from "./draft_rules.js";
import { DraftStore, fresh } from "./draft_store.js";
import { showHash } from "./hash.js";
import { load } from "./registry.js";
import { todayInFiles } from "./today.js";

/** @typedef {import("./draft_problem.js").Given} Given */
/** @typedef {import("./draft_problem.js").Problem} Problem */

const [SITE, RULES] = ["data/draft-site.js", "data/draft.js"];
const PROBLEMS = "draft-problems";

/**
 * What the page knows of the site.
 * @typedef {object} Site
 * @property {import("./draft_svg.js").Marks} marks
 * @property {Record<string, number[]>} typical bores by sport
 * @property {string[]} pieces the first map of each
 * @property {string} folder of the maps
 * @property {import("./draft_out.js").Forge | null} forge
 * @property {string | null} edit the address to which a file's path is added to correct it
 */

/** @param {HTMLElement} host */
export function startDraft(host) {
  const root = host.dataset["rbRoot"] ?? "";
  const said = el("p", { class: "rb-draft-said", role: "status" }, "Loading parts and rules …");
  fill(host, said);
  Promise.all([load("draft-site", root + SITE), load("draft", root + RULES)]).then(
    ([site, given]) => show(host, root, /** @type {Site} */ (site), /** @type {any} */ (given)),
    () => {
      said.textContent = "The list of parts and rules could not be loaded. Load the page again; offline, open it once while there is a network.";
    },
  );
}

/**
 * @param {HTMLElement} host
 * @param {string} root
 * @param {Site} site
 * @param {Omit<Given, "today">} given
 */
function show(host, root, site, given) {
  const store = new DraftStore();
  const said = el("p", { class: "rb-draft-said", role: "status" });
  const urgent = el("p", { class: "rb-draft-said", role: "alert" });
  const say = (/** @type {string} */ says, isUrgent = false) => {
    said.textContent = isUrgent ? "" : says;
    urgent.textContent = isUrgent ? says : "";
  };
  /** @type {number[]} */
  let bores = [];
  const parts = () => given.parts;
  const holes = holesView(store, { say, typical: site.typical, marks: site.marks, parts });
  const frame = frameForm(store, say, given.limits.smallest_head_mm, () => holes.focus());
  const fitted = partsForm(store, { parts, bores: () => bores, chosen: () => holes.holes.chosenWords });
  const facts = factsForm(store);
  const photo = photoView(store, say);
  const out = outView(store, { ...site, say });
  const list = el("datalist", { id: PART_LIST }, ...Object.entries(given.parts).map(([id, { name }]) => el("option", { value: id }, name)));
  const fields = () => [...frame.fields, ...fitted.fields, ...facts.fields];
  const problems = problemsView((problem) => {
    const found = fieldOf(problem, fields());
    const hole = holeOf(problem);
    if (found && (!hole || found.path().length > 1)) return found.control.focus();
    if (!hole) return holes.focus();
    if (holes.holes.which !== "both") holes.holes.which = hole.startsWith("L") ? "L" : "R";
    holes.holes.go(Number(hole.slice(1)), false);
    holes.focus();
    holes.element.scrollIntoView({ block: "nearest" });
  });

  const steps = /** @type {const} */ ([
    ["Undo", () => store.undo()],
    ["Redo", () => store.redo()],
  ]).map(([words, go]) => bar(words, () => (go(), say(words === "Undo" ? "Undone." : "Done again."))));
  const toProblems = el("a", { href: `#${PROBLEMS}` });
  const anew = question(bar("Begin anew", () => (store.isBegun ? anew.ask() : say("There is nothing to clear."))), "Clear this draft and begin anew?", "Clear it", () => {
    store.change(fresh());
    showHash("");
    say("Cleared. Undo brings it back.");
  });
  const opening = el("div", { role: "alert" });
  const kept = el("div", { role: "alert" });
  const later = el(
    "div",
    { class: "rb-draft-later" },
    part("Hole by hole", "holes", holes.element, photo.element),
    part("Problems", "problems", problems.element),
    part("What sits in the holes", "parts", fitted.element),
    part("The rest", "rest", facts.strung, facts.others),
    part("The map", "map", out.element),
  );
  fill(
    host,
    list,
    opening,
    kept,
    part("The frame", "frame", frame.element, anew.element),
    later,
    el("div", { class: "rb-draft-bar" }, el("div", { class: "rb-draft-words" }, said, urgent, toProblems), ...steps),
  );

  store.listen((state) => {
    const { draft } = state;
    const isWalked = Boolean(draft["walk"]);
    const { opened: slug } = state;
    const { frame: found, problems: all } = isWalked ? judged(draft, { ...given, today: todayInFiles(), slug }) : { frame: null, problems: [] };
    bores = boresOf(draft);
    later.hidden = !isWalked;
    frame.show(draft);
    fitted.draw(draft);
    for (const field of fields()) {
      field.show(draft);
      field.mark(all);
    }
    if (isWalked) {
      const seen = found ?? judged(bare(draft), { ...given, today: todayInFiles(), slug }).frame;
      holes.show(seen, !all.some(({ severity }) => severity === "error"), new Set(all.filter(({ severity }) => severity !== "note").flatMap(holesIn)));
      photo.show(seen);
      problems.show(all);
      out.show(state);
    }
    toProblems.hidden = !isWalked;
    toProblems.textContent = isWalked ? sumOf(all) || "Nothing wrong" : "";
    [steps[0].disabled, steps[1].disabled] = [!store.before.length, !store.undone.length];
    fill(kept, !store.isKept && el("p", { class: "rb-caution" }, "This browser refuses to keep anything, as in a private window: download the map before you leave this page."));
  });

  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    const step = key === "z" ? (event.shiftKey ? 1 : 0) : key === "y" ? 1 : null;
    if (step === null) return;
    event.preventDefault();
    steps[step].click();
  });
  later.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && isTyping(event.target)) holes.focus();
  });
  const follow = () => openAsked(store, site, root, opening, say);
  addEventListener("hashchange", follow);
  follow();
}

/**
 * Opens the map that the address asks for; asks first where a draft would be lost.
 * @param {DraftStore} store
 * @param {Site} site
 * @param {string} root
 * @param {HTMLElement} place
 * @param {(says: string, isUrgent?: boolean) => void} say
 */
async function openAsked(store, site, root, place, say) {
  const slug = askedMap(location.hash);
  fill(place);
  if (!slug) return;
  try {
    const draft = await openMap(slug, site.pieces, root);
    if (!draft) return say(`The book has no map “${slug}”.`, true);
    const name = String(draft["name"]);
    const take = () => {
      fill(place);
      store.change({ draft, slug, opened: slug });
      showHash("");
      say(`${name} is open. Correct it hole by hole.`);
    };
    if (!store.isBegun) return take();
    const asked = question(null, `Open ${name}? It takes the place of the draft you have here; Undo brings that back.`, `Open ${name}`, take, "Keep my draft", () => showHash(""));
    fill(place, asked.element);
    asked.ask();
  } catch {
    say("The map could not be loaded. Load the page again.", true);
  }
}

/**
 * A button that asks before it does something.
 * @param {HTMLElement | null} button
 * @param {string} words
 * @param {string} yes
 * @param {() => void} go
 * @param {string} [no]
 * @param {() => void} [leave]
 */
function question(button, words, yes, go, no = "Leave it", leave = () => {}) {
  const box = el("div", { class: "rb-draft-question", role: "group", "aria-label": words, hidden: true });
  const close = (/** @type {() => void} */ then) => () => {
    box.hidden = true;
    then();
    button?.focus();
  };
  const agree = bar(yes, close(go));
  fill(box, el("span", {}, words), agree, bar(no, close(leave)));
  return {
    element: el("div", { class: "rb-draft-asking" }, button, box),
    ask() {
      box.hidden = false;
      agree.focus();
    },
  };
}

/**
 * @param {string} title
 * @param {string} name
 * @param {...Node} inside
 */
function part(title, name, ...inside) {
  const heading = el("h2", { id: `draft-${name}` }, title);
  return el("section", { "aria-labelledby": `draft-${name}`, class: `rb-draft-part rb-draft-part--${name}` }, heading, ...inside);
}

/**
 * @param {string} words
 * @param {() => void} go
 */
function bar(words, go) {
  const element = el("button", { type: "button", class: "rb-button" }, words);
  element.addEventListener("click", go);
  return element;
}

/**
 * What can be drawn of a draft whose parts or places cannot be read.
 * @param {import("./draft_written.js").Draft} draft
 */
function bare({ fitted, strips, places_mm, rim_depth_mm, stringing, ...draft }) {
  const { tie_offs, ...order } = stringing ?? {};
  return { ...draft, stringing: order };
}

/** @param {import("./draft_written.js").Draft} draft */
function boresOf(draft) {
  const found = [...lengthsOf(draft["bore_mm"], clockwise(counts(draft))).values()].filter((bore) => bore !== "unknown");
  return [...new Set(found.map(Number))].sort((a, b) => a - b);
}
