/** What the worker answers when a page is opened or loads something: from the edition that it belongs to. */

import { lostPage } from "./offline_lost.js";
import { filesOf, pathOf } from "./offline_paths.js";
import { hashOf, headersOf } from "./offline_store.js";

/** @typedef {import("./offline_edition.js").Edition} Edition */

/** @typedef {import("./offline_edition.js").Listed} Listed */

/** @typedef {import("./offline_keeper.js").Keeper} Keeper */

/**
 * @param {any} event of a request by GET inside the scope, as a service worker is told of it
 * @param {Keeper} keeper
 * @returns {Promise<Response>}
 */
export async function answer(event, keeper) {
  const { request } = event;
  const { editions, store, scope } = keeper;
  const opens = request.mode === "navigate";
  const path = pathOf(request.url, scope);
  const edition = opens ? await editions.current() : await editions.of(event.clientId);
  if (path === null || !edition) return fetch(request);
  // A page that is newer than what is kept: what a cache on the way holds may be as old.
  if (!edition.version) return fetch(request, { cache: "no-cache" });
  if (opens) editions.begins(event.resultingClientId);
  const file = await listed(filesOf(path), edition, keeper);
  const kept = file && (await store.get(file));
  if (kept) return part(kept, request.headers.get("Range"));
  if (!opens) return loaded(event, file, keeper);
  if (!file && path && (await edition.find(`${path}/index.html`, keeper.reach))) {
    return Response.redirect(`${request.url.split(/[?#]/)[0]}/`);
  }
  return opened(event, file, keeper);
}

/**
 * @param {readonly string[]} paths
 * @param {Edition} edition
 * @param {Keeper} keeper
 * @returns {Promise<Listed | null>}
 */
async function listed(paths, edition, keeper) {
  for (const path of paths) {
    const found = await edition.find(path, keeper.reach);
    if (found) return found;
  }
  return null;
}

/**
 * A page that is not kept yet. One that is not of the edition that is kept is newer, and so is what it loads.
 * @param {any} event
 * @param {Listed | null} file
 * @param {Keeper} keeper
 */
async function opened(event, file, keeper) {
  const { request } = event;
  let response;
  try {
    response = await fetch(request);
  } catch {
    return lostPage(request, keeper.scope);
  }
  if (!response.ok) return response;
  const got = { bytes: await response.arrayBuffer(), type: response.headers.get("Content-Type") };
  if (file && (keeper.alters || (await hashOf(got.bytes)) === file[1])) {
    event.waitUntil(keeper.putOpened(file, got));
  } else {
    await keeper.editions.passOver(event.resultingClientId);
    event.waitUntil(keeper.ask({ look: true }));
  }
  return new Response(got.bytes, { headers: headersOf(got.bytes, got.type) });
}

/**
 * Something that a page loads and that is not kept yet.
 * @param {any} event
 * @param {Listed | null} file
 * @param {Keeper} keeper
 */
async function loaded(event, file, keeper) {
  try {
    const response = await fetch(event.request);
    if (file && response.status === 200) event.waitUntil(keepCopy(response.clone(), file, keeper));
    return response;
  } catch {
    return Response.error();
  }
}

/**
 * @param {Response} response
 * @param {Listed} file
 * @param {Keeper} keeper
 */
async function keepCopy(response, file, keeper) {
  try {
    const got = { bytes: await response.arrayBuffer(), type: response.headers.get("Content-Type") };
    if ((await hashOf(got.bytes)) === file[1]) await keeper.putOpened(file, got);
  } catch {
    // The page has left before everything had come.
  }
}

/**
 * The whole, or the one run of bytes that is asked for.
 * @param {Response} whole
 * @param {string | null} range
 */
async function part(whole, range) {
  const wanted = /^bytes=(\d*)-(\d*)$/.exec(range ?? "");
  if (!wanted || !(wanted[1] || wanted[2])) return whole;
  const bytes = await whole.arrayBuffer();
  const all = bytes.byteLength;
  const first = wanted[1] ? Number(wanted[1]) : Math.max(0, all - Number(wanted[2]));
  const last = wanted[1] && wanted[2] ? Math.min(all - 1, Number(wanted[2])) : all - 1;
  if (first > last) return new Response(null, { status: 416, headers: { "Content-Range": `bytes */${all}` } });
  const cut = bytes.slice(first, last + 1);
  return new Response(cut, {
    status: 206,
    headers: {
      ...headersOf(cut, whole.headers.get("Content-Type")),
      "Content-Range": `bytes ${first}-${last}/${all}`,
    },
  });
}
