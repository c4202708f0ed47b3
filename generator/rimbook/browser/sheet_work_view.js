/** The work on a sheet: how there is to be worked, what is bought for it, and what it costs the player. */

import { el, fill } from "./dom.js";
import { buyView } from "./sheet_buy_view.js";
import { clockView } from "./sheet_clock_view.js";
import { startJobs } from "./sheet_jobs.js";
import { quoteView } from "./sheet_quote_view.js";

/** @typedef {import("./sheet_job.js").Jobs} Jobs */
/** @typedef {import("./sheet_jobs.js").Store} Store */

/** Scripts lie side by side, two folders below the root of the site; where this one lies is known only now. */
const HERE = document.currentScript instanceof HTMLScriptElement ? document.currentScript.src : "";

/**
 * @param {HTMLElement} place
 * @param {Store} store
 * @returns {Jobs}
 */
export function startWork(place, store) {
  const jobs = startJobs(store, HERE && new URL("buy_worker.js", HERE).href);
  const prices = HERE ? new URL("../../prices/index.html", HERE).href : "prices/index.html";
  const clock = clockView(store);
  const buying = buyView(store.frame, jobs, prices);
  const quoted = quoteView(jobs, prices);
  fill(place, el("div", { class: "rb-work" }, clock.element, buying.element, quoted.element));
  jobs.listen((job) => {
    clock.show(job);
    buying.show(job);
    quoted.show(job);
  });
  return jobs;
}
