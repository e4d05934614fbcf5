// What holds of a morning that follows from notes, whatever the place: a run's own waterings as notes give its morning.

import type { SeasonInput } from "../../../src/season/input.ts";
import { prepareSeason } from "../../../src/season/run.ts";
import { carriedDiffers } from "../../season/carried.ts";
import { dice } from "../dice.ts";
import { property } from "../harness.ts";

property(
  "a run's own waterings written down as notes, with a gauge read every day, give its morning to 1e-9",
  (worked) => {
    const plan = worked.value("season.plan") as SeasonInput | null;
    const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
    // Wind and damp of the air are not carried on; what they do to crops then is another run's.
    if (!plan || !record || record.wind || record.vapour) return null;
    if (plan.rainScale <= 0 || "failed" in prepareSeason(plan, record)) return null;
    const d = dice(worked.seed);
    const some = (count: number) => Array.from({ length: count }, () => d.pick([0, 0.1, 0.5, 0.9]));
    const first = {
      date: record.firstDay + d.whole(20, Math.max(20, record.rain.length - 60)),
      levels: some(plan.tanks.length),
      shares: some(plan.batteries.length),
    };
    return carriedDiffers(plan, record, first, d.pick([1, 6, 25]));
  },
  { every: 3 },
);
