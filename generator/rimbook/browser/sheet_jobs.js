/** The job as it changes: with the marks, with what the shop entered, and when a purchase has been planned. */

import { recall, remember } from "./device.js";
import { plan } from "./buy_run.js";
import { doing, jobOf, USUAL_CHOICE } from "./sheet_job.js";
import { onShopElsewhere, openShop } from "./shop.js";

/** @typedef {import("./buy_needs.js").Accept} Accept */
/** @typedef {import("./buy_problem.js").Problem} Problem */
/** @typedef {import("./buy_solver.js").Plan} Plan */
/** @typedef {import("./sheet_frame.js").SheetFrame} SheetFrame */
/** @typedef {import("./sheet_job.js").Choice} Choice */
/** @typedef {import("./sheet_job.js").Doing} Doing */
/** @typedef {import("./sheet_job.js").Job} Job */
/** @typedef {import("./sheet_job.js").Jobs} Jobs */
/** @typedef {import("./sheet_state.js").Sheet} Sheet */
/** @typedef {import("./shop.js").Shop} Shop */

/**
 * What the parts of the sheet share; see `sheet_store.js`.
 * @typedef {object} Store
 * @property {SheetFrame} frame
 * @property {() => Sheet} sheet
 * @property {(next: Sheet) => void} change
 * @property {(callback: (sheet: Sheet) => void) => void} listen
 */

/** @typedef {Jobs & {shop: () => Shop, choose: (choice: Choice) => void}} OwnJobs */

const NAME = "sheet-choice";
/** @type {readonly Accept[]} */
const ACCEPTED = ["own", "serves", "may serve"];
/** Marks come in bursts; a plan begun for each would be thrown away. */
const PAUSE_MS = 60;

/**
 * @param {Store} store
 * @param {string} [script] address of the Worker's script; without one the page does the work
 * @returns {OwnJobs}
 */
export function startJobs(store, script) {
  /** @type {((job: Job) => void)[]} */
  const callbacks = [];
  let shop = openShop();
  let choice = keptChoice();
  /** @type {Doing} */
  let now;
  /** @type {Job} */
  let job;
  /** The plan at hand, and what it is for. */
  let known = { key: "", plan: /** @type {Plan | null} */ (null) };
  let stop = new AbortController();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;

  const tell = (/** @type {Plan | null} */ found) => {
    job = jobOf(store.frame, store.sheet(), shop, choice, now, found);
    for (const callback of callbacks) callback(job);
  };
  const work = async (/** @type {Problem} */ problem, /** @type {string} */ key) => {
    stop = new AbortController();
    const { signal } = stop;
    const found = await plan(problem, { script, signal });
    if (signal.aborted) return;
    known = { key, plan: found };
    tell(found);
  };
  const update = () => {
    now = doing(store.frame, store.sheet(), shop, choice);
    const { problem } = now;
    const key = problem ? JSON.stringify(problem) : "";
    if (!problem || key === known.key) {
      stop.abort();
      clearTimeout(timer);
      return tell(problem && known.plan);
    }
    stop.abort();
    clearTimeout(timer);
    timer = setTimeout(() => work(problem, key), PAUSE_MS);
    tell(null);
  };

  const openAgain = () => {
    shop = openShop();
    update();
  };
  onShopElsewhere(openAgain);
  // A page that a browser kept while another was open has missed what changed there.
  addEventListener("pageshow", (event) => event.persisted && openAgain());
  store.listen(update);

  return {
    job: () => job,
    shop: () => shop,
    listen: (callback) => {
      callbacks.push(callback);
      callback(job);
    },
    choose: (next) => {
      choice = next;
      remember(NAME, choice);
      update();
    },
  };
}

/** @returns {Choice} */
function keptChoice() {
  const kept = /** @type {Partial<Choice> | null} */ (recall(NAME));
  const accept = ACCEPTED.find((each) => each === kept?.accept) ?? USUAL_CHOICE.accept;
  return { accept, refresh: kept?.refresh === true };
}
