/** The board's sums: one parts list for several frames. */

const FORMAT = 1;

/**
 * @typedef {object} CardPart
 * @property {string | null} id null where nobody knows the part
 * @property {string} name
 * @property {string} path its page, empty where it has none
 * @property {string} kind
 * @property {number} count pieces for a full regrommet
 * @property {string} sold how it can be bought, in words
 */

/**
 * What a board says of one frame, as the build wrote it.
 * @typedef {object} Card
 * @property {number} format
 * @property {string} slug
 * @property {string} name
 * @property {string} path
 * @property {string} drawing
 * @property {[string, string][]} facts
 * @property {CardPart[]} parts
 */

/**
 * @typedef {object} Line
 * @property {CardPart} part
 * @property {number} total
 * @property {{slug: string, name: string, count: number}[]} frames
 */

/**
 * @param {unknown} value as the data file handed it over
 * @returns {Card | null} null where it is of another edition
 */
export function readCard(value) {
  const card = /** @type {Partial<Card> | null | undefined} */ (value);
  return card?.format === FORMAT && Array.isArray(card.facts) && Array.isArray(card.parts)
    ? /** @type {Card} */ (card)
    : null;
}

/**
 * Each part once, with the sum and its share for each frame, most pieces first. Unknown parts of
 * different frames are not the same part: nobody knows.
 * @param {readonly Card[]} cards
 * @returns {Line[]}
 */
export function sum(cards) {
  /** @type {Map<string, Line>} */
  const lines = new Map();
  for (const card of cards) {
    for (const part of card.parts) {
      const name = part.id ?? `${card.slug} ${part.name}`;
      const line = lines.get(name) ?? { part, total: 0, frames: [] };
      line.total += part.count;
      line.frames.push({ slug: card.slug, name: card.name, count: part.count });
      lines.set(name, line);
    }
  }
  const known = (/** @type {Line} */ line) => (line.part.id === null ? 1 : 0);
  return [...lines.values()].sort(
    (a, b) => known(a) - known(b) || b.total - a.total || (a.part.name < b.part.name ? -1 : 1),
  );
}
