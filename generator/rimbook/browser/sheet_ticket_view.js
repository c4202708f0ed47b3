/** The end of the bench sheet: a ticket for the player, a pick list for the technician, the address to send. */

import { button } from "./button.js";
import { el, fill } from "./dom.js";
import { reached, whereIs } from "./sheet_address.js";
import { copyText } from "./sheet_copy.js";
import { pasteField } from "./sheet_paste.js";
import { fillPicks } from "./sheet_picks_view.js";
import { printOnly } from "./sheet_print.js";
import { isBlank } from "./sheet_state.js";
import { ticketOf } from "./sheet_ticket.js";
import { ticketDrawing } from "./sheet_ticket_drawing.js";
import { fillTicket } from "./sheet_ticket_paper.js";
import { today } from "./today.js";

/** @typedef {import("./sheet_jobs.js").OwnJobs} OwnJobs */
/** @typedef {import("./sheet_store.js").Store} Store */

/** Marks come in bursts, and a ticket is looked at after them. */
const PAUSE_MS = 200;

/** What is typed for one ticket, with as many letters as it has room for. */
const FIELDS = /** @type {const} */ ([
  ["player", "Player", 60],
  ["strings", "String and tension", 80],
  ["remark", "Remark", 240],
]);

/**
 * @param {HTMLElement} place
 * @param {Store} store
 * @param {OwnJobs} jobs
 */
export function startTicket(place, store, jobs) {
  const { frame } = store;
  const page = factsOf(document);
  const face = document.querySelector("[data-rb-drawing='face'] svg");
  const drawing = face instanceof SVGSVGElement ? ticketDrawing(face, frame) : null;
  const ticket = el("article", {
    "class": "rb-ticket",
    "data-rb-paper": "ticket",
    "aria-label": "Ticket for the player",
  });
  const picks = el("article", { "class": "rb-picks", "data-rb-paper": "picks", "aria-label": "Pick list" });
  const blank = el("p", {}, "Mark what you see first: then the ticket for the player and the pick list are made here.");
  const said = el("p", { role: "status" });
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;
  const fields = FIELDS.map(([name, label, most]) => {
    const input = el("input", { type: "text", name, autocomplete: "off", maxlength: String(most) });
    input.addEventListener("input", soon);
    return { input, name, element: el("label", {}, label, input) };
  });
  function soon() {
    timer ??= setTimeout(show, PAUSE_MS);
  }
  const typed = () =>
    /** @type {import("./sheet_ticket_paper.js").Typed} */ (
      Object.fromEntries(fields.map(({ input, name }) => [name, input.value.trim()]))
    );

  const show = () => {
    clearTimeout(timer);
    timer = undefined;
    const [sheet, job] = [store.sheet(), jobs.job()];
    const date = today();
    blank.hidden = !isBlank(sheet);
    whole.hidden = isBlank(sheet);
    if (isBlank(sheet)) return fill(ticket);
    const facts = { ...page, isExample: jobs.shop().isExample };
    const head = { name: page.name || frame.name, about: [page.maker, frame.sport].filter(Boolean).join(", "), date };
    drawing?.show(sheet, asDone(job));
    fillTicket(ticket, ticketOf(frame, sheet, job, facts), head, typed(), here(), drawing?.element ?? null);
    const isIdle = job.judged.ends || !job.picks.length;
    picking.hidden = isIdle;
    if (isIdle) fill(picks);
    else fillPicks(picks, frame, job.picks, date);
  };
  const here = () => reached(frame, store.sheet(), whereIs(document));
  const copy = async () => {
    const { address, code } = here();
    const isCopied = await copyText(address || code);
    if (!isCopied)
      fill(
        said,
        "This browser does not let the page copy. Copy this by hand: ",
        el("span", { class: "rb-ticket-typable" }, address || code),
      );
    else
      fill(
        said,
        address
          ? "The address is copied."
          : "This book lies in a folder, so the code of the sheet is copied. It can be opened on the page of this frame, below.",
      );
  };
  const printed = (/** @type {"ticket" | "picks"} */ paper) => {
    show();
    printOnly(paper);
  };

  const picking = el(
    "div",
    {},
    el("h3", {}, "Pick list"),
    button("Print pick list", () => printed("picks")),
    picks,
  );
  const whole = el(
    "div",
    {},
    el("p", {}, "What you type here is printed on this ticket and kept nowhere."),
    el("div", { class: "rb-ticket-fields" }, ...fields.map(({ element }) => element)),
    el(
      "p",
      {},
      button("Print ticket", () => printed("ticket")),
      button("Copy address to send", copy),
    ),
    said,
    ticket,
    picking,
  );
  fill(place, el("h3", {}, "Ticket"), blank, whole, pasteField(store));

  show();
  store.listen(soon);
  jobs.listen(soon);
  addEventListener("beforeprint", show);
}

/**
 * The verdicts as far as they were carried out: what was put off, or had no part, is left as it was.
 * @param {import("./sheet_job.js").Job} job
 */
function asDone({ verdicts, work }) {
  const done = new Set(work.map(({ piece }) => piece));
  return verdicts.map((verdict) =>
    done.has(verdict.piece) ? verdict : { ...verdict, act: /** @type {const} */ ("leave") },
  );
}

/**
 * What the page says of the frame besides its holes.
 * @param {Document} page
 */
function factsOf(page) {
  const limit = page.querySelector("[data-rb-limit]");
  const words = limit instanceof HTMLElement ? `${limit.dataset["rbLimit"]} ${limit.dataset["rbLimitUnit"]}` : "";
  const name = page.querySelector("h1")?.firstChild?.textContent?.trim() ?? "";
  return { name, maker: page.querySelector(".rb-lead a")?.textContent ?? "", limit: words };
}
