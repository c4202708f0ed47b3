/** The service worker of the site: what is kept is answered without the network. */

import { answer } from "./offline_answer.js";
import { Keeper } from "./offline_keeper.js";
import { pathOf } from "./offline_paths.js";

/** @type {any} a ServiceWorkerGlobalScope */
const worker = globalThis;
const scope = worker.registration.scope;
const EVERY_MS = 200;

const keeper = new Keeper(scope, tell, async () =>
  (await worker.clients.matchAll({ type: "all", includeUncontrolled: true })).map(
    (/** @type {{ id: string }} */ client) => client.id,
  ),
);

worker.addEventListener("install", (/** @type {any} */ event) => {
  worker.skipWaiting();
  event.waitUntil(begin());
});

worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener("fetch", (/** @type {any} */ event) => {
  if (event.request.method === "GET" && pathOf(event.request.url, scope) !== null) {
    event.respondWith(answer(event, keeper));
  }
});

worker.addEventListener("message", (/** @type {any} */ event) => {
  const wish = event.data?.rimbook;
  if (wish === "forget") event.waitUntil(forget());
  else if (wish) event.waitUntil(keeper.ask(wish));
});

/** The first time, what every page needs is there before the worker answers anything. */
async function begin() {
  if (!(await keeper.editions.current())) await keeper.ask({ whole: false });
}

async function forget() {
  await keeper.forget();
  await worker.registration.unregister();
  tell(keeper.kept);
}

let told = -Infinity;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let later;

/** Tells all pages, but not more often than anybody can read. @param {import("./offline_kept.js").Kept} kept */
function tell(kept) {
  clearTimeout(later);
  const wait = told + EVERY_MS - performance.now();
  if (kept.busy && wait > 0) {
    later = setTimeout(() => tell(kept), wait);
    return;
  }
  told = performance.now();
  void send({ ...kept });
}

/** @param {import("./offline_kept.js").Kept} kept */
async function send(kept) {
  const behind = await keeper.editions.behind();
  for (const client of await worker.clients.matchAll({ type: "window", includeUncontrolled: true })) {
    if (client.url.startsWith(scope)) client.postMessage({ rimbook: { ...kept, behind: behind.has(client.id) } });
  }
}
