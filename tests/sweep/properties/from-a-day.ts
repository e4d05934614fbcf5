// What holds of a season that is begun in its midst.

import type { SeasonInput } from "../../../src/season/input.ts";
import { prepareSeason } from "../../../src/season/run.ts";
import { differenceFrom } from "../../season/going-on.ts";
import { property } from "../harness.ts";

/** Days that a place is followed after it was stopped. */
const FOLLOWED = 120;

property("a season gone on with from the state of a day is the one that was never stopped", (worked) => {
  const plan = worked.value("season.plan") as SeasonInput | null;
  const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
  if (!plan || !record || "failed" in prepareSeason(plan, record)) return null;
  // Any day of the first two years, another in each place.
  const stop = (worked.seed * 397) % Math.min(record.rain.length - 1, 730);
  return differenceFrom(plan, record, stop, FOLLOWED);
});
