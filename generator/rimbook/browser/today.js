/** The day it is where the reader is, in words. */

/** @returns {string} `4 October 2026`, as the pages of the book write a day */
export function today() {
  return new Intl.DateTimeFormat("en-GB", { dateStyle: "long" }).format(new Date());
}
