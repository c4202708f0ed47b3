/**
 * A text of any kind as YAML reads it back, whatever it could be read as otherwise (YAML 1.2; words and numbers of
 * YAML 1.1 are quoted as well).
 */

const PLAIN = /^[A-Za-z][A-Za-z0-9_ .'&/()-]*$/;
const MEANS_MORE = new Set(["true", "false", "null", "yes", "no", "on", "off", "unknown"]);
// What JSON lets stand and YAML does not, or what no reader can see.
export const UNSEEN = /[\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff]/g;

/**
 * A text as YAML reads it back: plain where that is safe, else in double quotes.
 * @param {string} text
 */
export function scalar(text) {
  const isPlain = PLAIN.test(text) && text === text.trim() && !MEANS_MORE.has(text.toLowerCase());
  return isPlain ? text : quoted(text);
}

/** @param {string} text */
function quoted(text) {
  const escape = (/** @type {string} */ each) => `\\u${each.charCodeAt(0).toString(16).padStart(4, "0")}`;
  return JSON.stringify(wellFormed(text)).replace(UNSEEN, escape);
}

/** @param {string} text with what is no character taken out */
export function wellFormed(text) {
  return text.replace(/\p{Surrogate}/gu, "\ufffd");
}
