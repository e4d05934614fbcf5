// Where the garden lies, when its season runs, and how the day's watering is bounded.

import type { Kind } from "../kind.ts";
import { choice, date, formula, given } from "../rows.ts";
import { SITE_SPANS } from "./spans.ts";

export const site: Kind = {
  kind: "site",
  label: "The place",
  purpose: "Where the garden lies, when it grows, and when it is watered.",
  group: "Sky and place",
  icon: { ink: "M3 20h18M6 20l5-9 4 5 2-3 3 7" },
  firstNumbers: [{ row: "latitude" }],
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
      help: "Says what each bed wants now, plans the week, and fills in how long the water lasts.",
      source: "your own entry",
    },
    given("latitude", "Latitude", "angle", [45, "deg"], "North is positive. Half a degree is near enough.", {
      min: -1.5708,
      max: 1.5708,
    }),
    given(
      "elevation",
      "Height above the sea",
      "height",
      [100, "m"],
      "Thins the air a little: it matters to siphons and to how fast things dry.",
      {
        min: -450,
        max: 6000,
      },
    ),
    date(
      "season_start",
      "Season from",
      "month_day",
      "05-01",
      "First day on which the beds may ask for water.",
    ),
    date("season_end", "Season until", "month_day", "09-30", "Last day. A season may run over the new year."),
    given(
      "minutes_per_day",
      "Time to water, a day",
      "duration",
      [60, "min"],
      "What one person can spend on it. Leave it empty for no limit.",
      {
        absent: "no limit on time",
        max: 86_400,
      },
    ),
    given(
      "water_at",
      "Watering at",
      "clock",
      [19, "h"],
      "The time of day at which the beds are watered: 7 pm, or 19:30.",
      {
        max: 86_400,
      },
    ),
    choice(
      "storage_rule",
      "A rainy day's roof water",
      { spill_first: "spills before it can be drawn (cautious)", use_first: "can be drawn the same day" },
      "spill_first",
      "Which comes first in a day's reckoning, the overflow or the watering. The cautious rule is the usual one.",
      { source: "Jenkins et al. 1978, yield after or before spillage", minor: true },
    ),
    given(
      "water_temperature",
      "Water temperature",
      "temperature",
      [15, "degC"],
      "Cold water is thicker and runs slower through thin hose.",
      {
        min: 273.16,
        max: 323.15,
        minor: true,
      },
    ),
    formula(
      "water_density",
      "Weight of the water",
      "density",
      "water_density(water_temperature)",
      "Water is heaviest at 4 °C and hardly lighter when warm.",
      "Tanaka et al. 2001, Metrologia 38:301",
      { minor: true },
    ),
    formula(
      "water_viscosity",
      "Thickness of the water",
      "viscosity",
      "water_viscosity(water_temperature)",
      "How thick the water is: half as thick at 40 °C as at 10 °C.",
      "Pátek et al. 2009, J. Phys. Chem. Ref. Data 38:21",
      { minor: true },
    ),
    formula(
      "atmospheric_head",
      "The air's own push",
      "head",
      "atmospheric_head(elevation, water_temperature)",
      "The height of water that the air can hold up here; no siphon lifts higher.",
      "FAO Irrigation and Drainage Paper 56, Eq. 7; Tanaka et al. 2001",
      { minor: true },
    ),
  ],
  models: [],
  cautions: [],
};
