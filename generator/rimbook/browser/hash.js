/** Writing behind the `#` of the address. */

const PAUSE_MS = 300;

/**
 * Puts something behind the `#` without a new step in the history.
 * @param {string} hash with `#`, or empty
 * @param {unknown} [state] what the step in the history remembers besides
 */
export function showHash(hash, state = history.state) {
  if (hash === location.hash && state === history.state) return;
  try {
    history.replaceState(state, "", location.pathname + location.search + hash);
  } catch {
    // Some browsers refuse after many changes in a row; the page works without.
  }
}

/** @type {number | undefined} */
let timer;
let pending = "";

/**
 * The same once the typing pauses: browsers refuse a page that rewrites its address at every key.
 * @param {string} hash
 */
export function showHashSoon(hash) {
  clearTimeout(timer);
  pending = hash;
  timer = setTimeout(showPendingHash, PAUSE_MS);
}

/** What waits for the pause, at once: before the reader leaves, so that the way back finds it. */
export function showPendingHash() {
  if (timer === undefined) return;
  clearTimeout(timer);
  timer = undefined;
  showHash(pending);
}
