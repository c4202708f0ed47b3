/** Whether string ends are tied off where a string passes, and as many as there are. */

import { byAddress } from "./draft_where.js";
import { counted } from "./draft_words.js";

/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Rule} */
export function tieOffs({ draft, frame }) {
  const holes = byAddress(frame);
  const words = /** @type {string[]} */ (draft.stringing?.tie_offs ?? []);
  return words.flatMap((word, index) => {
    const path = ["stringing", "tie_offs", index];
    const hole = holes.get(word);
    if (words.indexOf(word) < index) {
      return { path, message: `${word} is a tie-off twice.`, hole: word, tip: "Keep one of the two." };
    }
    if (!hole?.drilled) {
      return { path, message: `${word} is a tie-off, but no hole is drilled there.`, hole: word };
    }
    if (hole.passes.length) return [];
    return {
      path,
      message: `${word} is a tie-off, but no string passes there to tie to.`,
      hole: word,
      expected: "a hole with a string",
    };
  });
}

/** @type {Rule} */
export function tieOffCount({ frame: { tieOffs: found, pieces } }) {
  const expected = 2 * pieces;
  if (!found.length || found.length === expected) return [];
  return [
    {
      path: ["stringing", "tie_offs"],
      message: `There are ${counted(found.length, "tie-off")} for ${counted(pieces, "piece")} of string.`,
      found: counted(found.length, "tie-off"),
      expected: counted(expected, "tie-off"),
      tip: "Leave the list out where the tie-offs are not known.",
    },
  ];
}
