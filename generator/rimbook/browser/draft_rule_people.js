/** Whether whoever confirmed a map is not whoever measured it, and nobody did so tomorrow. */

/** @typedef {import("./draft_where.js").Rule} Rule */
/** @typedef {ReturnType<Rule>[number]} Told */

/** @type {Rule} */
export function someoneElseConfirmed({ draft }) {
  const people = /** @type {string[]} */ ((draft.confirmed ?? []).map((/** @type {any} */ { by }) => by));
  return people.flatMap((by, index) => {
    const path = ["confirmed", index, "by"];
    if (by === draft.measured?.by) {
      const message = `${by} measured this map and cannot confirm it as well.`;
      return { path, message, tip: "A second pair of eyes is what confirms a map." };
    }
    if (people.indexOf(by) === index) return [];
    return { path, message: `${by} confirmed this map already.`, tip: "Keep the later one." };
  });
}

/** @type {Rule} */
export function noFutureDates({ draft }, { today, limits }) {
  const tip = "A date is written year-month-day.";
  const last = new Date(`${today}T00:00:00Z`);
  last.setUTCDate(last.getUTCDate() + limits.days_ahead);
  const dates = [
    { path: ["measured", "on"], on: draft.measured?.on },
    ...(draft.confirmed ?? []).map((/** @type {any} */ { on }, /** @type {number} */ index) => ({
      path: ["confirmed", index, "on"],
      on,
    })),
  ];
  /** @type {Told[]} */
  const told = dates.flatMap(({ path, on }) => {
    return on && on > last.toISOString().slice(0, 10) ? { path, message: `${on} is yet to come.`, tip } : [];
  });
  const { year } = draft;
  if (year && year > Number(today.slice(0, 4)) + limits.years_ahead) {
    told.push({ path: ["year"], message: `The year ${year} is far off.`, tip });
  }
  return told;
}
