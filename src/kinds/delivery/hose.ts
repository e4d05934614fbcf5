// What a delivery is given: its hose, its watering head, and how full its tank is.

import type { Row } from "../../graph/types.ts";
import { gather, given } from "../rows.ts";

/** What a bucket was timed under. */
export const TEST_CONDITIONS = [
  "tested_length",
  "tested_bore",
  "tested_lift",
  "tested_voltage",
  "tested_resistance",
] as const;

const AT_TEST = { minor: true, when: { row: "has_test", is: ["1"] } } as const;

const BUCKET_ROWS: readonly Row[] = [
  given("bucket_volume", "A bucket of", "volume", null, { absent: "no bucket timed yet", min: 0.000_1 }),
  given("bucket_time", "Fills in, as you water", "duration", null, {
    absent: "no bucket timed yet",
    min: 1,
    keeps: TEST_CONDITIONS,
  }),
  given("open_time", "Fills in, wand taken off", "duration", null, {
    absent: "open end not timed",
    min: 1,
    minor: true,
    keeps: TEST_CONDITIONS,
  }),
  given("tested_length", "Timed through", "length", { formula: "hose_length" }, { ...AT_TEST, max: 1000 }),
  given(
    "tested_bore",
    "Of a bore of",
    "bore",
    { formula: "hose_bore" },
    { ...AT_TEST, min: 0.002, max: 0.5 },
  ),
  given(
    "tested_lift",
    "Timed with a lift of",
    "head",
    { formula: "lift" },
    { ...AT_TEST, min: -1000, max: 1000 },
  ),
  given(
    "tested_voltage",
    "Timed at",
    "voltage",
    { formula: "pump.supply_voltage" },
    { ...AT_TEST, min: 0.1, max: 100 },
  ),
  given(
    "tested_resistance",
    "Wire then, both ways",
    "resistance",
    { formula: "pump.wire_resistance" },
    AT_TEST,
  ),
];

export const HOSE_ROWS: readonly Row[] = [
  given("hose_length", "Hose", "length", [50, "ft"], { max: 1000 }),
  given("hose_bore", "Inside bore", "bore", [0.625, "in"], { min: 0.002, max: 0.5 }),
  given("roughness", "Roughness", "roughness", [0.0015, "mm"], { max: 0.005, minor: true }),
  given("fittings_k", "Fittings", "factor", [2.5, "1"], { max: 1000, minor: true }),
  given("head_k", "Wand or rose", "factor", [0, "1"], { max: 100_000, minor: true }),
  given("rose_holes", "Holes in its rose", "count", null, {
    absent: "no rose with counted holes",
    min: 1,
    max: 10_000,
    minor: true,
  }),
  given("rose_hole", "Each hole across", "bore", [1, "mm"], { min: 0.000_1, max: 0.02, minor: true }),
  gather(
    "filters_k",
    "Its filters",
    "factor",
    { kind: "filter", by: "on", take: "k_in_use", how: "sum" },
    { minor: true },
  ),
  given("tank_share", "With the tank filled to", "share", [50, "%"], { max: 1, minor: true }),
  ...BUCKET_ROWS,
];
