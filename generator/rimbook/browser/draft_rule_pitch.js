/** Whether the posts of a twin are as far apart as its two holes. */

import { mm, rounded } from "./draft_number.js";
import { places } from "./draft_places.js";
import { grouped } from "./draft_rule_barrel.js";
import { partOf } from "./draft_rule_parts.js";
import { fittedLines } from "./draft_where.js";
import { runs } from "./draft_words.js";

/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

/** @type {Rule} */
export function twinPitch(settled, { parts, limits }) {
  const { draft, frame } = settled;
  const placed = places(frame);
  const paths = new Map(fittedLines(settled).flatMap(({ path, kept }) => kept.map((at) => [at, path])));
  const give = limits.give_mm + 2 * (draft.measured?.resolution_mm ?? 0);
  const wrong = frame.twins.flatMap(({ holes, part }) => {
    const pitch = partOf(parts, part)?.pitch ?? null;
    const [first, second] = holes.map((at) => placed.get(at));
    if (pitch === null || !first || !second) return [];
    const apart = Math.hypot(first.at[0] - second.at[0], first.at[1] - second.at[1]);
    const measured = first.measured && second.measured;
    if (Math.abs(apart - pitch) <= (measured ? give : limits.give_derived_mm)) return [];
    return [{ holes, part, pitch, path: paths.get(holes[0]) ?? ["fitted"], apart: rounded(apart, 1), measured }];
  });
  return grouped(wrong, ({ path, apart, measured }) => [path, apart, measured]).map((group) => {
    const { holes, part, pitch, path, apart, measured } = group[0];
    const verb = measured ? "are" : "are worked out to be";
    return /** @type {Told} */ ({
      path,
      message: `${part} has its posts ${mm(pitch)} apart, but ${holes[0]} and ${holes[1]} ${verb} ${mm(apart)} apart.`,
      hole: runs(group.flatMap((twin) => twin.holes)),
      expected: `a pitch of about ${mm(apart)}`,
      severity: measured ? "error" : "warning",
      tip: measured ? null : "Measure the places of the two holes to be sure.",
    });
  });
}
