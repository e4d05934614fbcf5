// What gives out first in each template, checked by a second freeing of the same bounds, written here from their definition.

import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { wordIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import type { Bound } from "../../src/network/bounds.ts";
import type { SeasonInput, TankPart } from "../../src/season/input.ts";
import { runSeason } from "../../src/season/run.ts";
import { baseOf } from "../../src/studies/ask.ts";
import { givesOut } from "../../src/studies/gives-out.ts";
import { STARTERS, starter } from "../starter.ts";

/** Ten times the tank, the litres at the start as they were. */
const tenfold = (tank: TankPart): TankPart => ({
  ...tank,
  vessel: { ...tank.vessel, volume: 10 * tank.vessel.volume },
  startShare: tank.startShare / 10,
});

/** A small tank: a line ends in it, and something draws from it to water. */
const isTub = (input: SeasonInput, id: string): boolean =>
  input.lines.some(({ to }) => to === id) &&
  [...input.deliveries, ...input.carries].some(({ from }) => from === id);

function byHand(input: SeasonInput, bound: Bound): SeasonInput {
  const tanks = (tubs: boolean) =>
    input.tanks.map((tank) => (isTub(input, tank.id) === tubs ? tenfold(tank) : tank));
  switch (bound) {
    case "storage":
      return { ...input, tanks: tanks(false) };
    case "tankful":
      return { ...input, tanks: tanks(true) };
    case "rain":
      return {
        ...input,
        roofs: input.roofs.map((roof) => ({ ...roof, footprint: 10 * roof.footprint })),
      };
    default:
      throw new Error(`No template is known to give out at ${bound}: free it by hand here.`);
  }
}

test.each(readdirSync(STARTERS).sort())(
  "%s: each bound that is named, freed by hand, takes away the days that were said, to the day",
  (name) => {
    const base = baseOf(starter(name, 6), CARD_KINDS);
    const answer = givesOut(base);
    if ("failed" in answer || answer.state !== "first") throw new Error(JSON.stringify(answer));
    const plan = base.whole.results.get("season.plan");
    const record = base.known.records.get(wordIn(base.whole.results.get("weather.record_in_use")));
    if (plan?.state !== "ready" || !record) throw new Error(`${name} has no season`);
    const input = plan.value as SeasonInput;
    const days = (of: SeasonInput, rain: number): number => {
      const run = runSeason({ ...of, rainScale: of.rainScale * rain }, record);
      if ("failed" in run) throw new Error(run.failed);
      return Math.round((run.totals.daysShort ?? Number.NaN) * run.totals.seasons);
    };
    const short = days(input, answer.rain);
    expect(answer.short.days).toBe(short);
    for (const rain of [1, 0.75].filter((share) => share > answer.rain)) expect(days(input, rain)).toBe(0);
    for (const { bounds, saved } of answer.first) {
      const [bound, ...more] = bounds;
      expect(more).toEqual([]);
      expect([bound, short - days(byHand(input, bound as Bound), answer.rain)]).toEqual([bound, saved]);
    }
  },
  300_000,
);
