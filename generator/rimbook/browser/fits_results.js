/** The ranked parts as lists, each part with how it sits, and the cautions above them. */

import { el } from "./dom.js";
import { missingOf } from "./fits_hole.js";
import { fitText, lengthText, reasonFacts, roomText } from "./fits_words.js";
import { counted } from "./words.js";

/** @typedef {import("./fits_data.js").Fits} Fits */
/** @typedef {import("./fits_data.js").Verdict} Verdict */
/** @typedef {import("./fits_hole.js").Wanted} Wanted */
/** @typedef {import("./fits_rules.js").Served} Served */

const AT_ONCE = 20;

/** @type {[Verdict, string][]} */
const GROUPS = [
  ["serves", "These serve"],
  ["may serve", "These may serve"],
  ["near miss", "Near misses"],
];

/**
 * One list a verdict, the best part first; empty ones are left out.
 * @param {readonly Served[]} found
 * @param {Wanted} wanted
 * @param {Fits} fits
 * @param {string} root the way from the page to the root of the site
 */
export function resultLists(found, wanted, fits, root) {
  return GROUPS.flatMap(([verdict, title]) => {
    const some = found.filter((each) => each.verdict === verdict);
    return some.length ? [group(title, some.map((each) => () => row(each, wanted, fits, root)))] : [];
  });
}

/**
 * What must be said beside these parts.
 * @param {readonly Served[]} found
 * @param {Fits} fits
 */
export function cautionBox(found, { cautions }) {
  const usable = found.filter(({ verdict }) => verdict !== "near miss");
  const said = {
    cracked: true,
    eyes: true,
    drill: !usable.length,
    trim: usable.some(({ seat }) => seat.reach.trim),
    driving: usable.some(({ seat }) => seat.fit.word === "needs driving"),
    dry: usable.some(({ part }) => part.swells),
  };
  const lines = Object.entries(said).flatMap(([name, is]) => (is ? [el("p", {}, cautions[name])] : []));
  return el("div", { class: "rb-caution", role: "note", "aria-label": "Cautions" }, ...lines);
}

/**
 * @param {Fits} fits
 * @param {string} root
 */
export function unjudgedList({ unjudged }, root) {
  if (!unjudged.length) return null;
  return el(
    "details",
    { class: "rb-fits-unjudged" },
    el("summary", {}, `Not judged: ${counted(unjudged.length, "part")} with sizes that nobody can rely on`),
    el(
      "ul",
      {},
      ...unjudged.map(({ name, path, why }) => el("li", {}, el("a", { href: root + path }, name), `: ${why}`)),
    ),
  );
}

/**
 * @param {string} title
 * @param {readonly (() => HTMLLIElement)[]} rows made as they are shown
 */
function group(title, rows) {
  const list = el("ol", { class: "rb-fits-list", role: "list" });
  const more = el("button", { type: "button", class: "rb-button" }, "Show more");
  const add = () => {
    const from = list.childElementCount;
    list.append(...rows.slice(from, from + AT_ONCE).map((make) => make()));
    more.hidden = list.childElementCount >= rows.length;
  };
  more.addEventListener("click", () => {
    const from = list.childElementCount;
    add();
    list.children[from]?.querySelector("a")?.focus();
  });
  add();
  return el("section", { "aria-label": title }, el("h2", {}, title), list, more);
}

/**
 * @param {Served} served
 * @param {Wanted} wanted
 * @param {Fits} fits
 * @param {string} root
 */
function row({ part, reasons, seat }, wanted, fits, root) {
  /** @type {[string, string][]} */
  const facts = [
    ...reasonFacts(
      reasons.filter(({ code }) => code !== "trim"),
      fits.sentences,
      missingOf(wanted),
    ),
    ["Fit", fitText(seat.fit, part)],
    ["String room", roomText(seat.room, part)],
    ["Length", lengthText(seat.reach, part, wanted.depth)],
    ["Pin", part.pin],
    ["Sold", part.sold],
    ["Material", part.swells ? `${part.material}: it swells, so fit it dry and check it again` : (part.material ?? "")],
  ];
  return el(
    "li",
    {},
    el(
      "h3",
      {},
      el("a", { href: root + part.path }, part.name),
      " ",
      el("span", { class: "rb-tag" }, seat.fit.word),
    ),
    el(
      "dl",
      { class: "rb-fits-facts" },
      ...facts
        .filter(([, says]) => says)
        .map(([name, says]) => el("div", {}, el("dt", {}, name), el("dd", {}, says))),
    ),
  );
}
