/**
 * Plans a purchase so that the page stays free: in a Worker where the browser allows one, and otherwise in
 * short slices on the page itself. Chromium refuses a Worker to a page that was opened from a folder.
 * Both ways give the same plan, by the same code.
 */

import { Solver } from "./buy_solver.js";

/** @typedef {import("./buy_problem.js").Problem} Problem */
/** @typedef {import("./buy_solver.js").Plan} Plan */

const SLICE_MS = 8;
const NODES_AT_ONCE = 10;

/** @type {Worker | null} */
let worker = null;
let workerRefused = false;
/** Plans that the Worker still owes. */
let waiting = 0;

/**
 * @param {Problem} problem
 * @param {object} [how]
 * @param {string} [how.script] address of the script for the Worker; without one the page does the work
 * @param {AbortSignal} [how.signal] ends the work: the marks have changed since
 * @returns {Promise<Plan | null>} null where it was ended
 */
export async function plan(problem, { script, signal } = {}) {
  if (script && !workerRefused) {
    try {
      return await inWorker(problem, script, signal);
    } catch {
      workerRefused = true;
      dismiss();
    }
  }
  return inSlices(problem, signal);
}

/**
 * @param {Problem} problem
 * @param {string} script
 * @param {AbortSignal} [signal]
 * @returns {Promise<Plan | null>}
 */
function inWorker(problem, script, signal) {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return resolve(null);
    const hired = (worker ??= new Worker(script));
    const { port1, port2 } = new MessageChannel();
    const over = new AbortController();
    const finish = () => {
      waiting--;
      port1.close();
      over.abort();
    };
    waiting++;
    port1.onmessage = (event) => {
      finish();
      resolve(event.data);
    };
    const fail = (/** @type {ErrorEvent} */ event) => {
      event.preventDefault();
      finish();
      reject(new Error(event.message));
    };
    const stop = () => {
      finish();
      if (!waiting && worker === hired) dismiss();
      resolve(null);
    };
    hired.addEventListener("error", fail, { signal: over.signal });
    signal?.addEventListener("abort", stop, { signal: over.signal });
    hired.postMessage(problem, [port2]);
  });
}

function dismiss() {
  worker?.terminate();
  worker = null;
}

/**
 * @param {Problem} problem
 * @param {AbortSignal} [signal]
 */
async function inSlices(problem, signal) {
  await pause();
  if (signal?.aborted) return null;
  const solver = new Solver(problem);
  let start = performance.now();
  while (solver.step(NODES_AT_ONCE)) {
    if (performance.now() - start < SLICE_MS) continue;
    await pause();
    if (signal?.aborted) return null;
    start = performance.now();
  }
  return solver.plan();
}

/** Lets the page do what waits: a timer would be held back to 4 ms, and to a second in a hidden tab. */
function pause() {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve(undefined);
    };
    port2.postMessage(null);
  });
}
