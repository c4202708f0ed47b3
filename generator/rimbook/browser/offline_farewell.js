/** A service worker that removes itself and what an earlier one kept: the site is being written right now. */

import { forgetAll } from "./offline_store.js";

/** @type {any} a ServiceWorkerGlobalScope */
const worker = globalThis;

worker.addEventListener("install", () => worker.skipWaiting());

worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(leave()));

async function leave() {
  await forgetAll(worker.registration.scope);
  await worker.registration.unregister();
  for (const client of await worker.clients.matchAll({ type: "window" })) client.navigate(client.url);
}
