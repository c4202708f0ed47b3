/** From addresses to the paths of a site's files, and back. A scope is the address of the site's top. */

/**
 * @param {string} address
 * @param {string} scope
 * @returns {string | null} null where it lies outside, or is written wrongly
 */
export function pathOf(address, scope) {
  const url = new URL(address);
  const top = new URL(scope);
  if (url.origin !== top.origin || !url.pathname.startsWith(top.pathname)) return null;
  try {
    return decodeURIComponent(url.pathname.slice(top.pathname.length));
  } catch {
    return null;
  }
}

/**
 * @param {string} path
 * @param {string} scope
 */
export function addressOf(path, scope) {
  return scope + path.split("/").map(encodeURIComponent).join("/");
}

/**
 * The files that may be meant by a path, the likeliest first: servers leave out `index.html`, some `.html`.
 * @param {string} path
 */
export function filesOf(path) {
  return path === "" || path.endsWith("/") ? [`${path}index.html`] : [path, `${path}.html`];
}
