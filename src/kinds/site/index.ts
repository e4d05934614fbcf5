// Where the garden lies, when its season runs, and how the day's watering is bounded.

import { DAY } from "../../units/constants.ts";
import type { Kind } from "../kind.ts";
import { choice, date, formula, given, text } from "../rows.ts";
import { SITE_SPANS } from "./spans.ts";

export const site: Kind = {
  kind: "site",
  label: "The place",
  purpose: "Where the garden lies, when it grows, and when it is watered.",
  group: "Sky and place",
  icon: { ink: "M3 20h18M6 20l5-9 4 5 2-3 3 7" },
  noted: ["rain"],
  local: ["latitude", "elevation"],
  glance: ["season_start", "season_end"],
  single: true,
  spans: SITE_SPANS,
  rows: [
    {
      row: "date",
      name: "today",
      label: "Today",
      form: "day",
      default: null,
      absent: "no day given",
    },
    text("happened", "Noted of the last weeks", "", { hidden: true }),
    given("latitude", "Latitude", "angle", [45, "deg"], {
      min: -1.5708,
      max: 1.5708,
      sizeless: true,
    }),
    given("elevation", "Height above the sea", "height", [100, "m"], {
      min: -450,
      max: 6000,
      sizeless: true,
    }),
    date("season_start", "Season from", "month_day", "05-01"),
    date("season_end", "Season until", "month_day", "09-30"),
    given("minutes_per_day", "Time to water, a day", "duration", [60, "min"], {
      absent: "no limit on time",
      max: DAY,
    }),
    given("water_at", "Watering at", "clock", [19, "h"], { max: DAY, sizeless: true }),
    choice(
      "storage_rule",
      "A rainy day's roof water",
      { spill_first: "spills before it can be drawn (cautious)", use_first: "can be drawn the same day" },
      "spill_first",
      { minor: true },
    ),
    given("water_temperature", "Water temperature", "temperature", [15, "degC"], {
      min: 273.16,
      max: 323.15,
      minor: true,
    }),
    formula("water_density", "Weight of the water", "density", "water_density(water_temperature)", {
      minor: true,
    }),
    formula("water_viscosity", "Thickness of the water", "viscosity", "water_viscosity(water_temperature)", {
      minor: true,
    }),
    formula(
      "atmospheric_head",
      "The air's own push",
      "head",
      "atmospheric_head(elevation, water_temperature)",
      { minor: true },
    ),
  ],
  models: [],
  cautions: [],
};
