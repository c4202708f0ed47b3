/** What a ticket tells the player, as plain words: what was found, done and left, what it costs, what to mind. */

import { shown } from "./money.js";
import { lineWords } from "./sheet_quote_view.js";
import { CHECKS } from "./sheet_state.js";
import { freshLeft } from "./sheet_verdict.js";
import { actWords, CHECK_ADVICE, CHECK_WORDS, markWords, reasonWords, SEEN_WORDS } from "./sheet_words.js";
import { grouped, rowsOf } from "./sheet_rows.js";
import { counted, listed } from "./words.js";

/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./sheet_time.js").Task} Task */
/** @typedef {import("./sheet_verdict.js").Verdict} Verdict */

/**
 * What the page of the frame says besides.
 * @typedef {object} Facts
 * @property {string} maker empty where nobody knows
 * @property {string} limit of tension as printed, such as `28 lb`; empty where nobody knows
 * @property {boolean} isExample whether prices come from the invented list
 */

/**
 * Something, with its reason.
 * @typedef {object} Told
 * @property {string} what
 * @property {string} why may be empty
 */

/**
 * @typedef {object} Price
 * @property {{what: string, amount: string}[]} lines
 * @property {string} total
 */

/**
 * @typedef {object} Ticket
 * @property {boolean} ends whether the frame is cracked: nothing was done, and why is all there is to tell
 * @property {Told[]} found
 * @property {Told[]} done
 * @property {Told[]} waits
 * @property {Told[]} watch
 * @property {Price | null} price
 * @property {string} unpriced why there is no price; empty where there is one, or nothing to charge
 * @property {string[]} cautions
 */

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Job} job
 * @param {Facts} facts
 * @returns {Ticket}
 */
export function ticketOf(frame, sheet, job, facts) {
  const { ends } = job.judged;
  const found = [...frameFound(sheet), ...holesFound(frame, sheet)];
  if (ends) {
    const done = [{ what: "Nothing", why: "the frame is cracked" }];
    return { ends, found, done, waits: [], watch: [], price: null, unpriced: "", cautions: [CHECK_ADVICE.crack] };
  }
  const hasPrice = job.isSettled && job.isPriced && job.work.length > 0;
  return {
    ends,
    found,
    done: doneOf(frame, sheet, job),
    waits: waitsOf(frame, job),
    watch: watchOf(frame, sheet, job),
    price: hasPrice ? priceOf(job) : null,
    unpriced: hasPrice || !job.work.length ? "" : noPrice(job),
    cautions: cautionsOf(frame, sheet, job, facts, hasPrice),
  };
}

/**
 * @param {Sheet} sheet
 * @returns {Told[]}
 */
function frameFound({ checks }) {
  const words = (/** @type {import("./sheet_state.js").Found} */ found) =>
    CHECKS.filter((check) => checks[check] === found).map((check) => CHECK_WORDS[check]);
  return [
    ...words("found").map((what) => ({ what: "On the frame", why: what })),
    { what: "Looked for and not found", why: words("none").join("; ") },
    { what: "Not looked for", why: words("not looked").join("; ") },
  ].filter(({ why }) => why);
}

/**
 * The worst first; how many were sound, and how many nobody looked at, by number alone.
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @returns {Told[]}
 */
function holesFound({ holes }, { marks, doubts }) {
  const order = holes.map(({ address }) => address);
  const worst = /** @type {const} */ (["missing", "split", "low", "grooved"]);
  const found = worst.flatMap((seen) =>
    grouped(
      order.filter((address) => marks[address]?.seen === seen),
      (address) => markWords(marks[address]),
    ).map(([words, addresses]) => ({ what: capital(words), why: rowsOf(order, addresses) })),
  );
  const sound = order.filter((address) => marks[address]?.seen === "sound").length;
  const unseen = order.filter((address) => !marks[address]).length;
  return [
    ...found,
    { what: "Sound", why: sound ? counted(sound, "hole") : "" },
    { what: "Not looked at", why: unseen ? counted(unseen, "hole") : "" },
    {
      what: "Not placed",
      why: doubts.length ? `${counted(doubts.length, "mark")} made on another version of the map` : "",
    },
  ].filter(({ why }) => why);
}

/**
 * Pieces that got the same for the same reason stand in one line.
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Job} job
 * @returns {Told[]}
 */
function doneOf(frame, sheet, { work, verdicts, picked }) {
  if (!work.length) return [{ what: "Nothing", why: "no part had to be turned or replaced" }];
  const parts = new Map(picked.map(({ piece, part }) => [piece, part]));
  const act = (/** @type {Task} */ { piece, act: own }) => {
    const part = parts.get(piece);
    const name = own === "replace" && part ? `, ${frame.names[part] ?? part}` : "";
    return `${own === "replace" ? "Replaced" : actWords(verdicts[piece]).replace("Turn", "Turned")}${name}`;
  };
  const rows = grouped(inWalk(frame, work), (task) =>
    JSON.stringify([act(task), causeOf(frame, sheet, verdicts[task.piece])]),
  );
  return rows.map(([key, tasks]) => {
    const [what, cause] = JSON.parse(key);
    return { what: `${what}: ${holesOf(frame, tasks)}`, why: cause };
  });
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Verdict} verdict
 * @returns {string} why a piece was turned or replaced
 */
function causeOf(frame, { marks }, { piece, reasons }) {
  const { kind, holes } = frame.pieces[piece];
  const seen = new Set(holes.map((hole) => marks[frame.holes[hole].address]?.seen));
  const broken = /** @type {const} */ (["split", "missing", "low"]).filter((each) => seen.has(each));
  if (!broken.length)
    return `grooved${reasons.some(({ why }) => why === "none fresh") ? ", no fresh position left" : ""}`;
  const whole = kind === "strip" ? "; a strip goes as a whole" : holes.length > 1 ? "; both posts are one part" : "";
  return listed(broken.map((each) => SEEN_WORDS[each])) + whole;
}

/**
 * What was put off for want of time.
 * @param {SheetFrame} frame
 * @param {Job} job
 * @returns {Told[]}
 */
function waitsOf(frame, { clock, verdicts }) {
  const rows = grouped(inWalk(frame, clock.later), ({ piece }) => actWords(verdicts[piece]));
  return rows.map(([what, tasks]) => ({ what: `${what}: ${holesOf(frame, tasks)}`, why: "there was no time for it" }));
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Job} job
 * @returns {Told[]}
 */
function watchOf(frame, { marks }, { work, verdicts }) {
  const left = verdicts.filter(({ act, watch }) => act === "leave" && watch);
  const worn = grouped(inWalk(frame, left), ({ reasons }) => reasons.slice(-1).map(reasonWords).join());
  const turned = grouped(
    inWalk(
      frame,
      work.filter(({ act }) => act === "turn"),
    ),
    ({ piece }) => {
      const { positions, step, holes } = frame.pieces[piece];
      const had = marks[frame.holes[holes[0]].address]?.turns ?? 0;
      return positions === null ? "unknown" : String(freshLeft(positions, step, had + verdicts[piece].quarters));
    },
  );
  return [
    ...worn.map(([why, pieces]) => ({ what: `Worn and left: ${holesOf(frame, pieces)}`, why })),
    ...turned.map(([fresh, pieces]) => ({ what: `Turned: ${holesOf(frame, pieces)}`, why: freshWords(fresh) })),
  ];
}

/** @param {string} left */
function freshWords(left) {
  if (left === "unknown") return "how many fresh positions are left is unknown";
  return left === "0"
    ? "on the last fresh position, to be replaced next"
    : `${counted(Number(left), "fresh position")} left`;
}

/**
 * @param {Job} job
 * @returns {Price}
 */
function priceOf({ quote, currency }) {
  const lines = quote.lines.map((line) => ({ what: capital(lineWords(line)), amount: shown(line.amount, currency) }));
  return { lines, total: shown(quote.total, currency) };
}

/** @param {Job} job */
function noPrice({ isSettled, unpriced }) {
  if (!isSettled) return "The price is still being worked out.";
  return unpriced.length
    ? `No price is printed: there is none for ${listed(unpriced)}.`
    : "No price was entered for this work.";
}

/**
 * @param {SheetFrame} frame
 * @param {Sheet} sheet
 * @param {Job} job
 * @param {Facts} facts
 * @param {boolean} hasPrice
 * @returns {string[]}
 */
function cautionsOf(frame, sheet, { judged, lacking }, { limit, isExample }, hasPrice) {
  const lacks = lacking.length ? holesOf(frame, inWalk(frame, lacking)) : "";
  const all = [
    sheet.checks.crack === "not looked" &&
      "Nobody has looked for cracks yet. Look over the whole frame before it is strung: a cracked frame is not strung.",
    ...judged.cares.map((care) => CHECK_ADVICE[care]),
    lacks &&
      `Not mended, for there was no part: ${lacks}. Have it mended before the racket is strung: a bare hole cuts the string.`,
    limit
      ? `The maker prints ${limit} as the limit of tension. Do not string above it.`
      : "Look for the limit of tension that the maker prints on the frame, and do not string above it.",
    "Grommets wear with play and with every string. Have them looked over each time the racket is strung, and stop playing if one splits or falls out.",
    hasPrice && isExample && "The prices come from an invented list of examples: this is no offer.",
  ];
  return all.flatMap((each) => each || []);
}

/**
 * Pieces, or what is said of them, clockwise.
 * @template {{piece: number}} Of
 * @param {SheetFrame} frame
 * @param {readonly Of[]} all
 */
function inWalk({ pieces }, all) {
  return [...all].sort((a, b) => pieces[a.piece].holes[0] - pieces[b.piece].holes[0]);
}

/**
 * @param {SheetFrame} frame
 * @param {readonly {piece: number}[]} all
 */
function holesOf({ holes, pieces }, all) {
  const order = holes.map(({ address }) => address);
  return rowsOf(
    order,
    all.flatMap(({ piece }) => pieces[piece].holes.map((hole) => order[hole])),
  );
}

/** @param {string} words */
function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
