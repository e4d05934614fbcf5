// A battery: what is left in a used one, and how many waterings that is.

import type { CardKind, Typed } from "../graph/types.ts";
import { COSTS, choice, DEFINITION, formula, gather, given, MEMORY, output, PRACTICE } from "./rows.ts";

const CHEMISTRIES = {
  lifepo4: "lithium iron phosphate",
  agm: "sealed lead (AGM or gel)",
  flooded: "flooded lead",
  ups: "sealed lead out of a UPS",
};

const pick = (
  lithium: number,
  agm: number,
  flooded: number,
  ups: number,
  unit: string,
): Record<string, Typed> => ({
  lifepo4: [lithium, unit],
  agm: [agm, unit],
  flooded: [flooded, unit],
  ups: [ups, unit],
});

export const battery: CardKind = {
  kind: "battery",
  label: "Battery",
  purpose: "Runs the pump where there is no socket.",
  rows: [
    choice("chemistry", "Kind", CHEMISTRIES, "agm", "It is printed on the case."),
    given("rated_capacity", "Printed on it", "charge", [20, "Ah"], "Amp-hours as printed.", { min: 1 }),
    given(
      "nominal_voltage",
      "Voltage",
      "voltage",
      { by: "chemistry", pick: pick(12.8, 12, 12, 12, "V") },
      "What it gives while it works.",
      { min: 1, max: 100, source: MEMORY },
    ),
    given(
      "health",
      "Left of that",
      "share",
      [70, "%"],
      "A used one has lost some. A lamp and a clock tell: printed amp-hours against what it gave.",
      { max: 1.2, source: "guessed until tested" },
    ),
    given(
      "depth_of_discharge",
      "May be drawn down by",
      "share",
      { by: "chemistry", pick: pick(80, 50, 50, 50, "%") },
      "Deeper wears it out sooner.",
      { max: 1, min: 0.01, source: MEMORY },
    ),
    given(
      "round_trip_efficiency",
      "Comes back of what goes in",
      "share",
      { by: "chemistry", pick: pick(95, 80, 75, 80, "%") },
      "The rest turns into heat while charging.",
      { min: 0.1, max: 1, minor: true, source: MEMORY },
    ),
    choice(
      "charged",
      "Charged",
      { mains: "from the house, each night", none: "by nothing yet" },
      "mains",
      "How it gets its charge back.",
    ),
    given(
      "charge_today",
      "Charged today to",
      "share",
      [100, "%"],
      "How full it is on the first day of the record, and today.",
      { max: 1, minor: true },
    ),
    formula(
      "usable_energy",
      "You can use",
      "energy",
      "rated_capacity * nominal_voltage * health * depth_of_discharge",
      "Amp-hours times volts, times what is left of it, times how far it may be drawn down.",
      DEFINITION,
    ),
    gather(
      "largest_load",
      "Largest load",
      "power",
      { kind: "delivery", by: "powered_by", take: "power", how: "max" },
      "The pump that takes the most.",
      { minor: true },
    ),
    gather(
      "round_energy",
      "One watering of all beds takes",
      "energy",
      { kind: "delivery", by: "powered_by", take: "round_energy", how: "sum" },
      "What one watering of every bed takes.",
      { minor: true },
    ),
    gather(
      "peak_energy",
      "A peak day takes",
      "energy",
      { kind: "delivery", by: "powered_by", take: "peak_energy", how: "sum" },
      "What a peak day's watering takes.",
      { minor: true },
    ),
    gather(
      "loads",
      "Pumps on it",
      "series",
      { kind: "delivery", by: "powered_by", take: "power", how: "list" },
      "Pumps that run on it.",
      { hidden: true },
    ),
    formula(
      "pumping_time",
      "Runs the pump for",
      "duration",
      "usable_energy / largest_load",
      "What you can use over what the pump takes.",
      DEFINITION,
      {
        none: [{ if: "largest_load <= 0 W", reason: "no pump with a known current runs on it" }],
      },
    ),
    formula(
      "waterings_per_charge",
      "Waterings a charge",
      "count",
      "floor(usable_energy / round_energy)",
      "What you can use over one watering of all its beds.",
      DEFINITION,
      {
        none: [{ if: "round_energy <= 0 Wh", reason: "no pump with a known current waters a bed on it" }],
      },
    ),
    formula(
      "days_without_sun",
      "Peak days without a charge",
      "span",
      "usable_energy / peak_energy * 1 day",
      "What you can use over what a peak day takes.",
      DEFINITION,
      {
        none: [{ if: "peak_energy <= 0 Wh", reason: "no pump with a known current waters a bed on it" }],
      },
    ),
    output(
      "lowest_charge",
      "Lowest it fell",
      "season.run",
      "share",
      "The lowest evening of the record, of what you can use.",
      "your record, day by day",
    ),
    ...COSTS,
  ],
  models: [],
  cautions: [
    {
      id: "lead_gas",
      where: { row: "chemistry", word: "flooded" },
      text: "Charging it gives off explosive gas: in the open or well vented, no sparks, terminals covered. Acid burns eyes: goggles and water at hand.",
      beside: "chemistry",
      source: PRACTICE,
      weight: "harm",
    },
    {
      id: "lithium_cold",
      where: { row: "chemistry", word: "lifepo4" },
      text: "Never charge it below freezing: it is ruined and may fail later. Bare used cells without a protection board are not for a garden.",
      beside: "chemistry",
      source: PRACTICE,
      weight: "harm",
    },
    {
      id: "battery_short",
      text: "A short across its posts melts tools and burns. Take off rings, cover the posts, fuse it, and lift with your legs: these are heavy.",
      beside: "usable_energy",
      source: PRACTICE,
      weight: "harm",
    },
  ],
};
