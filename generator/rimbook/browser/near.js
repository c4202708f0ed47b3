/** Words that are one slip of the finger away. */

const SHORTEST = 4;
const MOST = 8;

/**
 * Whether a word begins as typed but for one letter: one too many, one missing, one wrong, or two
 * neighbours swapped.
 * @param {string} typed
 * @param {string} word
 */
export function beginsNear(typed, word) {
  let same = 0;
  while (same < typed.length && typed[same] === word[same]) same += 1;
  const rest = typed.slice(same);
  return (
    word.startsWith(rest.slice(1), same) ||
    word.startsWith(rest, same + 1) ||
    word.startsWith(rest.slice(1), same + 1) ||
    (rest.length > 1 && word.startsWith(`${rest[1]}${rest[0]}${rest.slice(2)}`, same))
  );
}

/**
 * The known words nearest to one that was typed, whole words before longer ones. Numbers are never
 * bent: 76 is not nearly 77.
 * @param {string} typed one folded word
 * @param {Iterable<string>} known
 * @returns {string[]}
 */
export function nearWords(typed, known) {
  if (typed.length < SHORTEST || /\p{N}/u.test(typed)) return [];
  /** @type {string[]} */
  const found = [];
  for (const word of known) {
    if (word.length >= SHORTEST - 1 && beginsNear(typed, word)) found.push(word);
  }
  const off = (/** @type {string} */ word) => Math.abs(word.length - typed.length);
  return found.sort((a, b) => off(a) - off(b) || (a < b ? -1 : 1)).slice(0, MOST);
}
