/** The page that stands in for one that is not kept while there is no network. */

import { pathOf } from "./offline_paths.js";

/**
 * @param {Request} request
 * @param {string} scope
 */
export function lostPage(request, scope) {
  const before = request.referrer && pathOf(request.referrer, scope) !== null ? request.referrer : "";
  const links = [
    [request.url, "Try again"],
    [before === request.url ? "" : before, "Back to where you were"],
    [`${scope}finder/index.html`, "Find a frame"],
    [`${scope}offline/index.html`, "What is kept on this device"],
    [`${scope}index.html`, "Home"],
  ];
  const items = links
    .filter(([address]) => address)
    .map(([address, words]) => `<li><a href="${escaped(address ?? "")}">${words}</a></li>`);
  const text = `<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><title>Not kept for offline use</title>
<link rel="stylesheet" href="${escaped(scope)}assets/rimbook.css"></head><body class="rb-lost"><main>
<h1>This page is not kept on this device</h1>
<p>There is no network now, and this page was never opened here before. What is kept can still be read.</p>
<ul>${items.join("")}</ul></main></body></html>`;
  return new Response(text, {
    status: 503,
    headers: { "Content-Type": "text/html; charset=utf-8", "Cache-Control": "no-store" },
  });
}

/** @param {string} text */
function escaped(text) {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");
}
