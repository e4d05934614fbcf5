// The dip stick's marks: one for each month of the season, from the tuned rule, and how they would have done.

import { expect, test } from "vitest";
import type { Stick } from "../../src/studies/stick.ts";
import { stickFor } from "../../src/studies/stick.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, inputOf, recordOf, roof, seattle, tank } from "../season/made.ts";

const beds = [10, 3, 1].map((worth, at) =>
  bed({
    id: ["good", "fair", "least"][at] as string,
    area: 4,
    covered: true,
    priority: at + 1,
    worth,
    crops: [crop({ crop: "tomato" })],
  }),
);
const plan = inputOf({
  start: "05-01",
  end: "09-30",
  holdDays: 7,
  roofs: [roof({ footprint: 14 })],
  tanks: [tank(1.5, { startShare: 1, outlet: 0.1 }), tank(0.5, { id: "other", startShare: 1 })],
  carries: [carry(), carry({ id: "more", from: "other" })],
  beds: beds.map((one) => ({ ...one, wateredBy: ["cans", "more"] })),
});

function stick(input = plan): Stick {
  const answer = stickFor(input, recordOf(seattle().rain, dayNumber(2012, 1, 1), { madeUp: false }));
  if (!("marks" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

test("has a mark for each month of the season, as deep in each tank as the water that is kept", () => {
  const { marks, kept, held, on, years } = stick();
  expect(marks.map(({ month }) => month)).toEqual([5, 6, 7, 8, 9]);
  expect([kept, held]).toEqual([["good"], ["fair", "least"]]);
  const full = 1.5 * 0.9 + 0.5;
  for (const { volume, depths } of marks) {
    const share = volume / full;
    // An upright tank of 1 m: depth is share, above what lies under the outlet.
    expect(depths.tank).toBeCloseTo(0.1 + 0.9 * share, 9);
    expect(depths.other).toBeCloseTo(share, 9);
  }
  expect(on).toBe(2);
  expect(marks.some(({ volume }) => volume > 0 && volume < full)).toBe(true);
  expect(years.map(({ year }) => year)).toEqual([2012, 2013, 2014, 2015]);
  const sum = (of: "loss" | "plain") => years.reduce((all, year) => all + year[of], 0);
  expect(sum("loss")).toBeLessThan(sum("plain"));
});

test("of one bed there is none, and of several worth the same all stand back, or the one watered last", () => {
  const record = recordOf(seattle().rain, dayNumber(2012, 1, 1));
  expect(stickFor({ ...plan, beds: plan.beds.slice(0, 1) }, record)).toEqual({ kind: "one_bed" });
  const alike = stick({ ...plan, beds: plan.beds.map((one) => ({ ...one, worth: 10 })) });
  expect([
    [[], ["good", "fair", "least"]],
    [["good", "fair"], ["least"]],
  ]).toContainEqual([alike.kept, alike.held]);
});
