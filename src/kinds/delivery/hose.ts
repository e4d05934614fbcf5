// What a delivery is given: its hose, its watering head, and how full its tank is.

import type { Row } from "../../graph/types.ts";
import { gather, given, PRACTICE } from "../rows.ts";

/** What a bucket was timed under. */
export const TEST_CONDITIONS = [
  "tested_length",
  "tested_bore",
  "tested_lift",
  "tested_voltage",
  "tested_resistance",
] as const;

const AT_TEST = { minor: true, when: { row: "has_test", is: ["1"] } } as const;
const THEN = "Written down when the bucket is typed in, so that a later change does not touch what was seen.";

const BUCKET_ROWS: readonly Row[] = [
  given("bucket_volume", "A bucket of", "volume", null, "Held where the water leaves.", {
    absent: "no bucket timed yet",
    min: 0.000_1,
  }),
  given(
    "bucket_time",
    "Fills in, as you water",
    "duration",
    null,
    "Through the wand or rose, where one is on. Time it twice; the second is the honest one.",
    { absent: "no bucket timed yet", min: 1, keeps: TEST_CONDITIONS },
  ),
  given(
    "open_time",
    "Fills in, wand taken off",
    "duration",
    null,
    "At the open end of the same hose. With both times pump and wand are told apart.",
    { absent: "open end not timed", min: 1, minor: true, keeps: TEST_CONDITIONS },
  ),
  given("tested_length", "Timed through", "length", { formula: "hose_length" }, THEN, {
    ...AT_TEST,
    max: 1000,
  }),
  given("tested_bore", "Of a bore of", "bore", { formula: "hose_bore" }, THEN, {
    ...AT_TEST,
    min: 0.002,
    max: 0.5,
  }),
  given("tested_lift", "Timed with a lift of", "head", { formula: "lift" }, THEN, {
    ...AT_TEST,
    min: -1000,
    max: 1000,
  }),
  given("tested_voltage", "Timed at", "voltage", { formula: "pump.supply_voltage" }, THEN, {
    ...AT_TEST,
    min: 0.1,
    max: 100,
  }),
  given(
    "tested_resistance",
    "Wire then, both ways",
    "resistance",
    { formula: "pump.wire_resistance" },
    THEN,
    AT_TEST,
  ),
];

export const HOSE_ROWS: readonly Row[] = [
  given("hose_length", "Hose", "length", [50, "ft"], "From the pump to its end.", { max: 1000 }),
  given("hose_bore", "Inside bore", "bore", [0.625, "in"], "A 5/8 in garden hose is 5/8 in inside.", {
    min: 0.002,
    max: 0.5,
  }),
  given("roughness", "Roughness", "roughness", [0.0015, "mm"], "Smooth plastic and hose.", {
    max: 0.005,
    minor: true,
    source: "from memory",
  }),
  given(
    "fittings_k",
    "Fittings",
    "factor",
    [2.5, "1"],
    "All of them together, entry and open end too, on the speed in the hose.",
    { max: 1000, minor: true, source: PRACTICE },
  ),
  given(
    "head_k",
    "Wand or rose",
    "factor",
    [0, "1"],
    "What it takes on top of an open end, on the speed in the hose. A bucket timed through it teaches this.",
    { max: 100_000, minor: true },
  ),
  given("rose_holes", "Holes in its rose", "count", null, "Count one row and multiply.", {
    absent: "no rose with counted holes",
    min: 1,
    max: 10_000,
    minor: true,
  }),
  given("rose_hole", "Each hole across", "bore", [1, "mm"], "A drill that just fits tells.", {
    min: 0.000_1,
    max: 0.02,
    minor: true,
    source: PRACTICE,
  }),
  gather(
    "filters_k",
    "Its filters",
    "factor",
    { kind: "filter", by: "on", take: "k_in_use", how: "sum" },
    "The loss of every filter or strainer in it, as clogged as it gets.",
    { minor: true },
  ),
  given(
    "tank_share",
    "With the tank filled to",
    "share",
    [50, "%"],
    "The water that the flow below is for, and the bucket was timed at.",
    {
      max: 1,
      minor: true,
    },
  ),
  ...BUCKET_ROWS,
];
