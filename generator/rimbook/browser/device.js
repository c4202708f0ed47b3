/** Small things kept on this device. A browser may refuse; then they last as long as the page. */

/** @type {Map<string, string>} */
const onPage = new Map();

/**
 * @param {string} name
 * @returns {unknown} null where nothing is kept, or nothing that can be read
 */
export function recall(name) {
  try {
    const text = onPage.get(name) ?? localStorage.getItem(`rimbook.${name}`);
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

/**
 * @param {string} name
 * @param {unknown} value
 * @returns {boolean} whether it will still be there next time
 */
export function remember(name, value) {
  const text = JSON.stringify(value);
  try {
    localStorage.setItem(`rimbook.${name}`, text);
    onPage.delete(name);
    return true;
  } catch {
    onPage.set(name, text);
    return false;
  }
}

/**
 * Calls back when another tab has changed what is kept.
 * @param {string} name
 * @param {() => void} callback
 */
export function onChangeElsewhere(name, callback) {
  addEventListener("storage", (event) => {
    if (event.key === null || event.key === `rimbook.${name}`) callback();
  });
}
