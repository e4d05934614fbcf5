// A delivery: one pump and hose from one tank to the beds, solved from its parts or by what a bucket and a clock said.

import type { Kind } from "../kind.ts";
import { COSTS, formula, gather, given, link, output } from "../rows.ts";
import { blaming } from "./blame.ts";
import { DELIVERY_CAUTIONS } from "./cautions.ts";
import { comparing } from "./figures.ts";
import { HOSE_ROWS } from "./hose.ts";
import { POINT_ROWS } from "./rows.ts";
import { running, stopping, tabling } from "./run.ts";
import { deliverySeason } from "./season.ts";
import { DELIVERY_SPANS } from "./spans.ts";
import { standing, testing } from "./test.ts";
import { leaving, reaching, timing } from "./time.ts";

/** Only a delivery without a pump's card says these itself. */
const BY_BUCKET = { row: "has_pump", is: ["0"] } as const;

export const delivery: Kind = {
  kind: "delivery",
  label: "Pump and hose",
  purpose: "A small pump in a tank, with the hose that puts its water on the beds.",
  group: "Ways for the water",
  season: deliverySeason,
  icon: { ink: "M4 20v-6h6v6zM7 14c0-9 12-9 12-1v6", tone: "M19 19l-2 2M19 19l2 2", color: "power" },
  uses: ["carries_dirt", "waters_beds"],
  joins: { from: "newest", pump: "newest", powered_by: "newest" },
  noted: ["bucket", "cleaned", "drained"],
  timed: { volume: "bucket_volume", time: "bucket_time" },
  local: ["outlet_height"],
  handSettings: ["hose_length", "hose_bore", "lowest_water", "watering_time"],
  mends: ["pump_time", "hands"],
  offers: [
    {
      name: "hose",
      says: "the next size of hose for {}",
      row: "hose_bore",
      // Garden hose by its bore, common practice, no source.
      buys: { larger: [0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2], unit: "in" },
    },
  ],
  drawn: { as: "delivery", beside: [{ row: "watering_time", tint: "power", text: "longest watering {}" }] },
  glance: ["watering_time", "flow"],
  spans: DELIVERY_SPANS,
  rows: [
    link("from", "Stands in", "holds_water", "stands in no tank"),
    link("pump", "Pump", "lifts_water", "no pump's card: its bucket tells"),
    {
      ...link("powered_by", "Runs on", "stores_power", "no battery is named"),
      when: BY_BUCKET,
    },
    ...HOSE_ROWS,
    given("lowest_water", "Leaves behind", "depth", [1, "in"], { when: BY_BUCKET }),
    given(
      "outlet_height",
      "Its hose ends at",
      "height",
      { formula: "from.floor_height + from.water_height + 1 ft" },
      { min: -1000, max: 1000, minor: true },
    ),
    given("set_up", "Move and set up", "duration", [5, "min"]),
    ...POINT_ROWS,
    formula(
      "siphons_down_to",
      "Pump off, it runs on down to",
      "depth",
      "max(outlet_height - from.floor_height, dead_depth)",
      {
        minor: true,
        none: [
          {
            if: "outlet_height >= from.floor_height + from.water_height",
            reason: "its hose ends above the tank, so it cannot run on by itself",
          },
        ],
      },
    ),
    gather(
      "largest_watering",
      "Largest watering",
      "volume",
      { kind: "bed", by: "watered_by", take: "asked_volume", how: "max" },
      { minor: true },
    ),
    gather(
      "round_volume",
      "One watering of all its beds",
      "volume",
      { kind: "bed", by: "watered_by", take: "asked_volume", how: "sum" },
      { minor: true },
    ),
    gather(
      "peak_volume",
      "Its beds need, on a peak day",
      "volume",
      { kind: "bed", by: "watered_by", take: "peak_day_need", how: "sum" },
      { minor: true },
    ),
    output("watering_time", "Longest watering", "timing", "duration"),
    output("watering_end", "Longest watering ends when", "timing", "text", {
      minor: true,
      options: [
        { word: "done", label: "it is done" },
        { word: "dry", label: "the tank is empty before it is done" },
        { word: "too_low", label: "the water has fallen too low for the pump" },
      ],
    }),
    formula(
      "tankfuls_per_watering",
      "Tankfuls, longest watering",
      "count",
      "ceil(largest_watering / from.reachable)",
      { minor: true, none: [{ if: "from.reachable <= 0 L", reason: "none of its tank's water comes out" }] },
    ),
    formula(
      "refill_wait",
      "Waits for the tank meanwhile",
      "duration",
      "max(tankfuls_per_watering - 1, 0) * from.refilled_in",
      { minor: true },
    ),
    output("drawdown_time", "Empties the tank in", "timing", "duration", { minor: true }),
    formula(
      "round_energy",
      "One watering of all its beds takes",
      "energy",
      "drawn_power * round_volume / flow",
      { minor: true },
    ),
    formula("peak_energy", "Takes on a peak day", "energy", "drawn_power * peak_volume / flow", {
      hidden: true,
    }),
    ...["drawn_power", "round_energy", "peak_energy"].map((name) =>
      formula(
        `own_${name}`,
        "Counted on its own battery",
        name === "drawn_power" ? "power" : "energy",
        name,
        { hidden: true, none: [{ if: "has_pump > 0", reason: "counted by its pump's battery" }] },
      ),
    ),
    output("season_volume", "Puts out in a season", "season.run", "volume"),
    output("season_time", "Runs in a season", "season.run", "duration", { minor: true }),
    ...COSTS,
  ],
  models: [standing, testing, running, stopping, blaming, tabling, timing, leaving, reaching, comparing],
  figures: [
    { row: "what_if", title: "What would give more" },
    { row: "curves", title: "Why no more comes" },
  ],
  cautions: DELIVERY_CAUTIONS,
};
