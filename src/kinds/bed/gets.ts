// What the season's run says of a bed, row by row.

import { valueOr } from "../../graph/outcomes.ts";
import type { Outputs } from "../../graph/types.ts";
import { BOUNDS, type Driver } from "../../network/bounds.ts";
import type { BedAnswer } from "../../season/answer.ts";
import type { SeasonInput } from "../../season/input.ts";
import { boundName } from "../../telling/words/bounds.ts";
import { NO_CROP } from "../none-said.ts";
import { driverOf } from "../season/drivers.ts";
import { bedYears } from "./years.ts";

/** What each day's watering of a bed gave and lacked, by day of the record. */
export type DayNotes = Pick<BedAnswer, "given" | "lacked" | "lastBy" | "unfilled"> & {
  readonly driver: Driver;
};

const dayWords = (days: number): string => {
  const rounded = days < 1 ? "under 1" : String(Math.round(days));
  return `${rounded} ${rounded === "1" || days < 1 ? "day" : "days"}`;
};

/** "charge in the battery: 12 days": the longest first. */
function lackedWords({ lackedDays }: BedAnswer, driver: Driver): string | null {
  const said = BOUNDS.map((bound, place) => ({ bound, days: lackedDays[place] ?? 0 }))
    .filter(({ days }) => days > 0)
    .sort((a, b) => b.days - a.days)
    .map(({ bound, days }) => `${boundName(bound, driver)}: ${dayWords(days)}`);
  return said.length > 0 ? said.join("; ") : null;
}

function ofWaterings(bed: BedAnswer, driver: Driver): Outputs {
  const notes: DayNotes = {
    given: bed.given,
    lacked: bed.lacked,
    lastBy: bed.lastBy,
    unfilled: bed.unfilled,
    driver,
  };
  return {
    days_helped: { value: bed.daysHelped },
    lacked_by: valueOr(lackedWords(bed, driver), "no watering lacked anything"),
    day_notes: { value: notes },
  };
}

/** Its water in a usual season. */
const bedWater = (bed: BedAnswer): Outputs => ({
  season_need: { value: bed.need },
  potential_use: { value: bed.potential },
  lacked_at_planting: { value: bed.owed },
  rain_counted: { value: bed.rained },
  season_got: { value: bed.got },
  season_past_roots: { value: bed.pastRoots },
  outside_days: { value: bed.outsideDays },
  share_met: valueOr(bed.shareMet, bed.none ?? NO_CROP),
  days_short: { value: bed.daysShort },
  rule_kept: valueOr(bed.ruleKept, "no set amount is due on set days"),
});

/** Rows of a bed that the run answers, by name. */
export function bedGets(bed: BedAnswer, plan: SeasonInput): Outputs {
  const driver = driverOf(plan, [bed.id]);
  return {
    ...bedWater(bed),
    ...ofWaterings(bed, driver),
    ...bedYears(bed, driver),
  };
}
