/** Whether holes lie on the rim, apart from each other, and where their strings meet it. */

import { mm, rounded } from "./draft_number.js";
import { curve, throatOf } from "./draft_outline.js";
import { bends, places } from "./draft_places.js";
import { pairs } from "./draft_rule_order.js";
import { halvesOf, walkOf } from "./draft_tally.js";
import { ofPlace, onWalk } from "./draft_where.js";
import { listed } from "./draft_words.js";

/** @typedef {import("./draft_where.js").Rule} Rule */

/** @type {Rule} */
export function placeOnRim({ frame }) {
  const line = curve(frame.head);
  const right = throatOf(line);
  return halvesOf(frame).flatMap((side) => {
    const length = side === "R" ? right : line.length - right;
    const beyond = frame.holes.find((hole) => hole.side === side && hole.place !== null && hole.place >= length);
    if (!beyond) return [];
    const half = mm(rounded(length, 1));
    const measured = mm(beyond.place ?? 0);
    return {
      path: ofPlace(frame, beyond.address),
      message: `${beyond.address} is measured at ${measured}, but half the rim is only ${half} long.`,
      hole: beyond.address,
      expected: `less than ${half}`,
      tip: "Either the place or the size of the head is wrong. Both belong to the line of holes.",
    };
  });
}

/** @type {Rule} */
export function holeGaps({ frame }, { limits }) {
  const placed = places(frame);
  const [least, most] = limits.gaps_mm[frame.sport];
  return halvesOf(frame).flatMap((side) => {
    const walk = walkOf(frame, side).flatMap(({ address }) => {
      const hole = placed.get(address);
      return hole ? [{ address, ...hole }] : [];
    });
    return pairs(walk).flatMap(([before, after]) => {
      const gap = Math.abs(after.along - before.along);
      const measured = [after, before].find((hole) => hole.measured)?.address;
      if (!measured || (least <= gap && gap <= most)) return [];
      return {
        path: ofPlace(frame, measured),
        message: `${before.address} and ${after.address} lie ${mm(rounded(gap, 1))} apart along the rim.`,
        hole: measured,
        expected: `${mm(least)} to ${mm(most)}`,
        tip: "Is a place left out or written twice? Places count from the middle of the head.",
      };
    });
  });
}

/** @type {Rule} */
export function stringsRunStraight({ frame }, { limits }) {
  const moved = bends(frame);
  const bend = (/** @type {string} */ address) => moved.get(address) ?? 0;
  return halvesOf(frame).flatMap((side) => {
    const far = frame.holes.filter((hole) => hole.side === side && bend(hole.address) > limits.bend_mm);
    const worst = far.sort((one, other) => rounded(bend(other.address), 1) - rounded(bend(one.address), 1));
    return worst.slice(0, limits.most_told["strings-run-straight"]).map(({ address, passes }) => ({
      path: onWalk(frame, address),
      message:
        `${address} takes ${listed(passes) || "nothing"}, but in the order of the walk it lies ` +
        `${mm(rounded(bend(address), 1))} from where a straight string meets the rim.`,
      hole: address,
      expected: `within ${mm(limits.bend_mm)}`,
      tip: "Look at the order of mains and crosses here, at the outline and at the spacing.",
    }));
  });
}
