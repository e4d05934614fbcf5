// The sky: a daily record of one's own, or one made up from monthly figures; and how fast it dries things.

import type { Kind } from "../kind.ts";
import { choice, date, given, hidden, months, output, text } from "../rows.ts";
import {
  chooseRecord,
  drying,
  pan,
  recordYears,
  USUAL_HIGHS,
  USUAL_LOWS,
  USUAL_RAIN,
  USUAL_WET_DAYS,
} from "./models.ts";
import { monthlySky } from "./monthly-sky.ts";
import { PAN_ROWS } from "./pan.ts";
import { WEATHER_SPANS } from "./spans.ts";

export const weather: Kind = {
  kind: "weather",
  label: "The sky",
  purpose: "The rain record everything runs on, and how fast things dry.",
  group: "Sky and place",
  icon: {
    ink: "M7 13a4 4 0 0 1 .6-8 5 5 0 0 1 9.3 1.4A3.4 3.4 0 0 1 17 13z",
    tone: "M8 16l-1 4M12 16l-1 4M16 16l-1 4",
    color: "water",
  },
  local: ["record", "normal_rain", "normal_wet_days", "normal_highs", "normal_lows", "monthly_eto"],
  glance: ["mean_yearly_rain", "longest_dry_run"],
  single: true,
  record: "record",
  spans: WEATHER_SPANS,
  rows: [
    text("record", "Rain record", "", { hidden: true }),
    output("record_kind", "Rain record", "choose", "text"),
    hidden("record_in_use", "Record in use", "choose", "text"),
    output("first_day", "First day", "years_of_record", "text", { minor: true }),
    output("last_day", "Last day", "years_of_record", "text", { minor: true }),
    output("days", "Days on record", "years_of_record", "count"),
    output("missing_days", "Days missing", "years_of_record", "count", { minor: true }),
    output("whole_years", "Whole years", "years_of_record", "count", { minor: true }),
    output("mean_yearly_rain", "Rain in a usual year", "years_of_record", "rain"),
    output("driest_year", "Driest year", "years_of_record", "year"),
    output("driest_year_rain", "Rain in that year", "years_of_record", "rain"),
    output("longest_dry_run", "Longest dry run, days", "years_of_record", "count"),
    output("dry_run_from", "Longest dry run began on", "years_of_record", "text", { minor: true }),
    output("mean_yearly_eto", "Drying in a usual year", "drying", "rain"),
    output("peak_day_eto", "Drying on a peak day", "drying", "rain"),
    output("eto_method", "Drying worked out by", "drying", "text"),
    output("days_from_normals", "Days without temperatures", "drying", "count", { minor: true }),
    hidden("daily_eto", "Drying, day by day", "drying", "series"),
    hidden("eto_choice", "Drying, as chosen", "drying", "series"),
    hidden("sky", "Sun and warmth by month", "monthly_sky", "series"),
    given("rain_scale", "Rain here against the record's", "factor", [1, "1"], { max: 5 }),
    given("eto_factor", "Drying here against the figure's", "factor", [1, "1"], { max: 3, minor: true }),
    date("frost_said", "First frost, as you know it", "month_day", null, "not said"),
    text("eto_factor_reason", "Why", "", { minor: true }),
    choice(
      "eto_from",
      "Drying from",
      { record: "the weather on record", monthly: "twelve monthly figures", pan: "a pan of mine" },
      "record",
      { minor: true },
    ),
    {
      ...months(
        "monthly_eto",
        "Drying a day, month by month",
        "evaporation",
        null,
        "mm/day",
        "no monthly figures given",
      ),
      when: { row: "eto_from", is: ["monthly"] },
    },
    ...PAN_ROWS,
    months("normal_rain", "Rain of each month", "rain", USUAL_RAIN, "mm"),
    {
      ...months("normal_wet_days", "Wet days of each month", "count", USUAL_WET_DAYS, ""),
      limits: [{ min: 0, max: 31 }],
    },
    months("normal_highs", "Warm of each month", "temperature", USUAL_HIGHS, "degC"),
    months("normal_lows", "Cold of each month", "temperature", USUAL_LOWS, "degC"),
    given("years", "Years to make up", "count", [20, "1"], {
      min: 2,
      max: 100,
      minor: true,
      sizeless: true,
    }),
    given("seed", "Which set of made-up years", "count", [1, "1"], {
      max: 1_000_000,
      minor: true,
      sizeless: true,
    }),
  ],
  models: [chooseRecord, recordYears, pan, drying, monthlySky],
  cautions: [
    {
      id: "warmth_of_normals",
      if: "days_from_normals > 0",
      beside: "eto_method",
      weight: "trouble",
    },
    {
      id: "made_up_weather",
      where: { row: "record_kind", word: "made up from monthly figures" },
      beside: "record_kind",
      weight: "trouble",
    },
  ],
};
