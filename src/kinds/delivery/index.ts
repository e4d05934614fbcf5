// A delivery: one pump and hose from one tank to the beds, solved from its parts or by what a bucket and a clock said.

import type { Kind } from "../kind.ts";
import { COSTS, DEFINITION, formula, gather, given, link, output, PRACTICE } from "../rows.ts";
import { blaming } from "./blame.ts";
import { DELIVERY_CAUTIONS } from "./cautions.ts";
import { comparing } from "./figures.ts";
import { HOSE_ROWS } from "./hose.ts";
import { laidDeliveries } from "./laid.ts";
import { POINT_ROWS } from "./rows.ts";
import { running, tabling } from "./run.ts";
import { DELIVERY_SPANS } from "./spans.ts";
import { standing, testing } from "./test.ts";
import { leaving, timing } from "./time.ts";

/** Only a delivery without a pump's card says these itself. */
const BY_BUCKET = { row: "has_pump", is: ["0"] } as const;

export const delivery: Kind = {
  kind: "delivery",
  label: "Pump and hose",
  purpose: "A small pump in a tank, with the hose that puts its water on the beds.",
  group: "Ways for the water",
  icon: { ink: "M4 20v-6h6v6zM7 14c0-9 12-9 12-1v6", tone: "M19 19l-2 2M19 19l2 2", color: "power" },
  uses: ["carries_dirt", "waters_beds"],
  joins: { from: "newest", pump: "newest", powered_by: "newest" },
  firstNumbers: [
    { row: "bucket_volume" },
    { row: "bucket_time" },
    { row: "current", unlessReady: "current" },
  ],
  local: ["outlet_height"],
  handSettings: ["lowest_water", "watering_time"],
  laid: laidDeliveries,
  drawn: { as: "delivery", beside: [{ row: "watering_time", tint: "power", text: "longest watering {}" }] },
  glance: ["watering_time", "flow"],
  spans: DELIVERY_SPANS,
  rows: [
    link("from", "Stands in", "holds_water", "stands in no tank", "The tank it draws from."),
    link(
      "pump",
      "Pump",
      "lifts_water",
      "no pump's card: by its bucket alone",
      "The pump at its end. Without one, a bucket and a clock must do.",
    ),
    {
      ...link(
        "powered_by",
        "Runs on",
        "stores_power",
        "no battery is named here: a pump's own card says what it runs on",
        "The battery it is clipped to, where no pump's card says so.",
      ),
      when: BY_BUCKET,
    },
    ...HOSE_ROWS,
    given("lowest_water", "Leaves behind", "depth", [1, "in"], "Depth of water the pump cannot pick up.", {
      source: PRACTICE,
      when: BY_BUCKET,
    }),
    given(
      "outlet_height",
      "Its hose ends at",
      "height",
      { formula: "from.floor_height + from.water_height + 1 ft" },
      "Height of the hose's end above the worksheet's zero, where it lies when the pump is off. Left empty: above the tank.",
      { min: -1000, max: 1000, minor: true },
    ),
    given(
      "set_up",
      "Move and set up",
      "duration",
      [5, "min"],
      "For each bed: carry it there, clip it on, pack it up.",
      { source: PRACTICE },
    ),
    ...POINT_ROWS,
    formula(
      "siphons_down_to",
      "Pump off, it runs on down to",
      "depth",
      "max(outlet_height - from.floor_height, dead_depth)",
      "Height of the hose's end above the tank's floor, or the depth that the pump cannot pick up.",
      DEFINITION,
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
      { kind: "bed", by: "watered_by", take: "watering_volume", how: "max" },
      "The bed that takes the most at once.",
      { minor: true },
    ),
    gather(
      "round_volume",
      "One watering of all its beds",
      "volume",
      { kind: "bed", by: "watered_by", take: "watering_volume", how: "sum" },
      "What all its beds take at one watering each.",
      { minor: true },
    ),
    gather(
      "peak_volume",
      "Its beds need, on a peak day",
      "volume",
      { kind: "bed", by: "watered_by", take: "peak_day_need", how: "sum" },
      "What all its beds need on a peak day.",
      { minor: true },
    ),
    output(
      "watering_time",
      "Longest watering",
      "timing",
      "duration",
      "The largest watering, from a full tank whose level falls meanwhile; by the bucket's flow alone where there is no pump's card.",
      "continuity, integrated over the level",
    ),
    output(
      "watering_end",
      "Then",
      "timing",
      "text",
      "How the largest watering ends, from a full tank with nothing running in.",
      "continuity",
      {
        minor: true,
        options: [
          { word: "done", label: "it is done" },
          { word: "dry", label: "the tank is empty before it is done" },
          { word: "too_low", label: "the water has fallen too low for the pump" },
        ],
      },
    ),
    formula(
      "tankfuls_per_watering",
      "Tankfuls, longest watering",
      "count",
      "ceil(largest_watering / from.reachable)",
      "The largest watering over what the tank lets you reach.",
      DEFINITION,
      { minor: true },
    ),
    formula(
      "refill_wait",
      "Waits meanwhile for the tank",
      "duration",
      "max(tankfuls_per_watering - 1, 0) * from.refilled_in",
      "The tankfuls after the first, each with the time in which a line fills the tank again; nothing runs in while the pump runs.",
      DEFINITION,
      { minor: true },
    ),
    output(
      "drawdown_time",
      "Empties the tank in",
      "timing",
      "duration",
      "From full down to what the pump cannot reach, with nothing running in.",
      "continuity, integrated over the level",
      { minor: true },
    ),
    formula(
      "round_energy",
      "One watering of all its beds takes",
      "energy",
      "drawn_power * round_volume / flow",
      "Power times the time that all its beds take.",
      DEFINITION,
      { minor: true },
    ),
    formula(
      "peak_energy",
      "Takes on a peak day",
      "energy",
      "drawn_power * peak_volume / flow",
      "Power times the time that a peak day's water takes.",
      DEFINITION,
      { hidden: true },
    ),
    ...["drawn_power", "round_energy", "peak_energy"].map((name) =>
      formula(
        `own_${name}`,
        "Counted on its own battery",
        name === "drawn_power" ? "power" : "energy",
        name,
        "Where no pump's card stands between.",
        DEFINITION,
        { hidden: true, none: [{ if: "has_pump > 0", reason: "counted by its pump's battery" }] },
      ),
    ),
    output(
      "season_volume",
      "Puts out in a season",
      "season.run",
      "volume",
      "What it gave in a usual season.",
      "your record, day by day",
    ),
    output(
      "season_time",
      "Runs in a season",
      "season.run",
      "duration",
      "How long it ran in a usual season.",
      "your record, day by day",
      { minor: true },
    ),
    ...COSTS,
  ],
  models: [standing, testing, running, blaming, tabling, timing, leaving, comparing],
  figures: [
    { row: "what_if", title: "What would give more" },
    { row: "curves", title: "Why no more comes" },
  ],
  cautions: DELIVERY_CAUTIONS,
};
