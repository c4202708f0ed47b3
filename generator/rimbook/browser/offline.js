/**
 * Keeping the site for offline use, as a page shows and asks for it.
 * `meta[name="rimbook-worker"]` says where the worker is.
 */

import { recall, remember } from "./device.js";
import { all } from "./dom.js";
import { NOTHING_KEPT } from "./offline_kept.js";
import { pathOf } from "./offline_paths.js";
import { startPlace } from "./offline_view.js";
import { NO_WORKER } from "./offline_words.js";

/** @typedef {import("./offline_words.js").Told} Told */

/** @typedef {import("./offline_view.js").Choice} Choice */

/** @typedef {import("./offline_view.js").Act} Act */

const KEPT_AS = "offline";
const AGAIN_MS = 20_000;

/** @type {any} with what only some browsers have, or only at secure addresses */
const device = navigator;

export function startOffline() {
  const places = all(document, "[data-rb-offline]", HTMLElement).map(startPlace);
  const worker = document.querySelector('meta[name="rimbook-worker"]')?.getAttribute("content");
  /** @param {string} why */
  const without = (why) => places.forEach((show) => show.without(why));
  if (!location.protocol.startsWith("http")) return without(NO_WORKER.folder);
  if (!worker) return without(NO_WORKER.serving);
  if (!device.serviceWorker) return without(NO_WORKER.insecure);
  /** @type {Told} */
  let told = { ...NOTHING_KEPT, behind: false };
  const show = () => places.forEach((each) => each.told(told, choice(), act));
  device.serviceWorker.addEventListener("message", (/** @type {MessageEvent} */ event) => {
    if (!event.data?.rimbook) return;
    told = event.data.rimbook;
    show();
  });
  const begin = () => register(worker).catch(() => without(NO_WORKER.refused));
  /** @type {Act} */
  const act = (what) => {
    if (what === "look") return void ask({ look: true });
    remember(KEPT_AS, what === "whole" ? "whole" : "none");
    if (what === "forget") {
      told = { ...NOTHING_KEPT, behind: false };
      void forget();
      return show();
    }
    void device.storage?.persist?.();
    void begin();
  };
  show();
  if (choice() === "none") return;
  if (document.readyState === "complete") void begin();
  else addEventListener("load", () => void begin());
  setInterval(() => {
    if (told.busy && document.visibilityState === "visible") void ask();
  }, AGAIN_MS);
  addEventListener("online", () => void ask());
}

async function forget() {
  const known = await device.serviceWorker.getRegistration();
  known?.active?.postMessage({ rimbook: "forget" });
}

/** @returns {Choice} */
function choice() {
  const found = recall(KEPT_AS);
  return found === "whole" || found === "none" ? found : "";
}

/** @param {string} worker */
async function register(worker) {
  const known = await device.serviceWorker.getRegistration();
  try {
    await device.serviceWorker.register(worker, { updateViaCache: "none" });
  } catch (error) {
    if (!known?.active) throw error;
  }
  await ask();
}

/**
 * Asks the worker to go on: for the whole book where the reader has chosen it, or where it is small and the
 * network is not said to be dear.
 * @param {{ look?: boolean }} [more]
 */
async function ask(more) {
  if (choice() === "none") return;
  const { active, scope } = await device.serviceWorker.ready;
  const whole = choice() === "whole" || (device.connection?.saveData ? false : null);
  const path = pathOf(location.href, scope);
  const page = path === null || (path !== "" && !path.endsWith("/")) ? path : `${path}index.html`;
  active.postMessage({ rimbook: { whole, page, ...more } });
}
