/**
 * What a reader measured, and the parts that fit it, as they type.
 *
 * `<div data-rb-fits data-rb-root="../">what a reader without JavaScript gets</div>` becomes form and answer;
 * `data-rb-root` is the way to the root of the site. Links elsewhere may fill the form in: see `fits_address.js`.
 */

import { el, fill } from "./dom.js";
import { moveBehindHash, readAddress, writeAddress } from "./fits_address.js";
import { readFits } from "./fits_data.js";
import { fitsForm } from "./fits_form.js";
import { FIELDS, FIELD_NAMES, NOTHING_TYPED, missingOf, readHole } from "./fits_hole.js";
import { cautionBox, resultLists, unjudgedList } from "./fits_results.js";
import { nearest, ranked } from "./fits_rules.js";
import { holeText, reasonFacts } from "./fits_words.js";
import { showHash, showHashSoon, showPendingHash } from "./hash.js";
import { size } from "./millimetres.js";
import { load } from "./registry.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./fits_data.js").Fits} Fits */
/** @typedef {import("./fits_hole.js").Wanted} Wanted */
/** @typedef {import("./fits_rules.js").Served} Served */

const DATA = "data/fits.js";
const PAUSE_MS = 250;

/** @param {HTMLElement} host */
export function startFits(host) {
  const root = host.dataset["rbRoot"] ?? "";
  const said = el("p", { class: "rb-fits-said", role: "status" }, "Loading the list of parts …");
  fill(host, said);
  load("fits", root + DATA).then(
    (value) => {
      try {
        show(host, said, root, readFits(value));
      } catch (error) {
        said.textContent = trouble(error);
      }
    },
    (error) => {
      said.textContent = trouble(error);
    },
  );
}

/** @param {unknown} error */
function trouble(error) {
  const says = error instanceof Error ? error.message : String(error);
  return `${says} Load the page again; offline, open it once while there is a network.`;
}

/**
 * @param {HTMLElement} host
 * @param {HTMLElement} said
 * @param {string} root
 * @param {Fits} fits
 */
function show(host, said, root, fits) {
  const form = fitsForm(fits.thresholds.string_mm);
  const answer = el("div", { class: "rb-fits-answer" });
  fill(host, form.element, said, answer);
  /** @type {number | undefined} */
  let timer;

  const work = () => {
    clearTimeout(timer);
    const { wanted, problems } = readHole(form.read(), fits.most);
    form.mark(problems);
    const wrong = FIELDS.filter((field) => problems[field]);
    if (wrong.length) {
      const named = listed(wrong.map((field) => FIELD_NAMES[field]));
      said.textContent = `Nothing is worked out yet. Look again at: ${named}.`;
      fill(answer);
      return wrong;
    }
    const found = ranked(wanted, fits);
    said.textContent = wanted.bore === null ? "Type the bore first: without it no fit is claimed." : total(found);
    fill(answer, ...answerTo(wanted, found, fits, root));
    return wrong;
  };
  const readLocation = () => {
    const typed = readAddress(location);
    if (!typed && location.hash.length > 1) return; // an anchor, such as that of a link to the contents
    form.write(typed ?? NOTHING_TYPED);
    work();
  };

  form.element.addEventListener("input", () => {
    clearTimeout(timer);
    timer = setTimeout(work, PAUSE_MS);
    showHashSoon(writeAddress(form.read()));
  });
  form.element.addEventListener("submit", (event) => {
    event.preventDefault();
    const [first] = work();
    showPendingHash();
    if (first) form.focus(first);
    else answer.querySelector("a")?.focus();
  });
  form.element.addEventListener("reset", (event) => {
    event.preventDefault();
    form.write(NOTHING_TYPED);
    showPendingHash();
    showHash("");
    work();
    form.focus("bore");
  });
  answer.addEventListener("click", showPendingHash, { capture: true });
  addEventListener("hashchange", readLocation);
  moveBehindHash();
  form.write(readAddress(location) ?? NOTHING_TYPED);
  work();
}

/** @param {readonly Served[]} found */
function total(found) {
  const of = (/** @type {string} */ verdict) => found.filter((each) => each.verdict === verdict).length;
  const [serves, may, near] = [of("serves"), of("may serve"), of("near miss")];
  const parts = [
    serves ? `${counted(serves, "part")} ${serves === 1 ? "serves" : "serve"}` : "no part surely serves",
    may ? `${may} may serve` : "",
    near ? `${near} ${near === 1 ? "misses" : "miss"} by little` : "",
  ];
  const [best] = found;
  if (!best) return "No part of this book serves this hole.";
  const text = listed(parts.filter(Boolean));
  const first = best.verdict === "near miss" ? "Nearest" : "First";
  return `${text[0]?.toUpperCase()}${text.slice(1)}. ${first}: ${best.part.name}, ${best.seat.fit.word}.`;
}

/**
 * @param {Wanted} wanted
 * @param {readonly Served[]} found
 * @param {Fits} fits
 * @param {string} root
 */
function answerTo(wanted, found, fits, root) {
  const missing = missingOf(wanted).map((what) => el("li", {}, fits.measure[what] ?? what));
  const measure = missing.length
    ? el("section", { class: "rb-note" }, el("p", {}, "To be sure, this is still to do:"), el("ul", {}, ...missing))
    : null;
  if (wanted.bore === null) return [measure];
  return [
    el("p", { class: "rb-fits-hole" }, holeText(wanted)),
    found.length ? measure : nothing(wanted, fits, root),
    cautionBox(found, fits),
    ...resultLists(found, wanted, fits, root),
    unjudgedList(fits, root),
  ];
}

/**
 * @param {Wanted} wanted
 * @param {Fits} fits
 * @param {string} root
 */
function nothing(wanted, fits, root) {
  const near = nearest(wanted, fits);
  if (!near) return null;
  const [[, why] = ["", ""]] = reasonFacts(near.reasons, fits.sentences, missingOf(wanted));
  return el(
    "p",
    {},
    "Nor does any miss it by little. The barrel that comes nearest to the bore is that of ",
    el("a", { href: root + near.part.path }, near.part.name),
    `, ${size(near.part.barrel_mm)} mm: ${why}. Measure the hole again, or look through `,
    el("a", { href: `${root}parts/index.html` }, "all parts"),
    ".",
  );
}
