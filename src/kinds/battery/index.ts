// A battery: what is left in a used one, and how many waterings that is.

import batteries from "../../../shared/batteries.json";
import type { Kind } from "../kind.ts";
import { COSTS, choice, formula, given, hidden, hiddenFrom, output } from "../rows.ts";
import { column } from "../tabled.ts";
import { BATTERY_CAUTIONS } from "./cautions.ts";
import { CHEMISTRIES } from "./chemistries.ts";
import { LOAD_ROWS } from "./loads.ts";
import { charging, chilling, lasting, loading, testingBattery, volting, weakening } from "./models.ts";
import { batterySeason } from "./season.ts";
import { BATTERY_SEASON_ROWS } from "./season-outputs.ts";
import { BATTERY_SPANS } from "./spans.ts";
import { VOLT_ROWS } from "./volts.ts";

const TABLE = batteries.chemistries;

/** What it holds over what the test lamp draws of it in the twenty hours that its label is for. */
const AT_TEST = "rated_capacity * health_in_use * test_cold * nominal_voltage / (test_load * 20 h)";

export const battery: Kind = {
  kind: "battery",
  label: "Battery",
  purpose: "Runs the pump where there is no socket.",
  group: "Power",
  season: batterySeason,
  icon: { ink: "M3 8h18v12H3zM7 8V5M17 8V5", tone: "M12 11v6M9 14h6", color: "power" },
  uses: ["stores_power", "gives_power"],
  noted: ["charged", "swapped", "drained"],
  handSettings: ["rated_capacity", "waterings_per_charge"],
  mends: ["energy"],
  offers: [
    {
      name: "bigger",
      says: "a bigger battery for {}",
      row: "rated_capacity",
      // Common practice, no source.
      buys: { larger: [7, 12, 18, 20, 26, 35, 50, 75, 100, 150, 200], unit: "Ah" },
      forgets: ["test_time"],
    },
  ],
  drawn: {
    as: "battery",
    beside: [{ row: "waterings_per_charge", tint: "power", text: "{} waterings a charge" }],
  },
  glance: ["waterings_per_charge", "usable_energy"],
  spans: BATTERY_SPANS,
  rows: [
    choice("chemistry", "Kind", CHEMISTRIES, "agm"),
    given("rated_capacity", "Printed on it", "charge", [20, "Ah"], { min: 1 }),
    given(
      "nominal_voltage",
      "Voltage",
      "voltage",
      { by: "chemistry", pick: column(TABLE, (row) => row.nominal_voltage) },
      { min: 1, max: 100 },
    ),
    given("health", "Left of that", "share", [70, "%"], { max: 1.2 }),
    given(
      "depth_of_discharge",
      "May be drawn down by",
      "share",
      { by: "chemistry", pick: column(TABLE, (row) => row.depth_of_discharge) },
      { max: 1, min: 0.01 },
    ),
    given(
      "round_trip_efficiency",
      "Comes back of what goes in",
      "share",
      { by: "chemistry", pick: column(TABLE, (row) => row.round_trip_efficiency) },
      { min: 0.1, max: 1, minor: true },
    ),
    choice(
      "charged",
      "Charged",
      {
        mains: "from the house, each night",
        in_place: "by a panel, where it stands",
        carried: "carried to the panel for a day",
        swapped: "swapped with a second one at the panel",
        none: "by nothing yet",
      },
      "mains",
    ),
    given("carried_every", "Carried there every", "count", [7, "1"], { min: 1, max: 365, minor: true }),
    given("temperature", "Battery's temperature", "temperature", [20, "degC"], {
      min: 263.15,
      max: 323.15,
      minor: true,
    }),
    given(
      "peukert",
      "Drained fast it gives less (Peukert's number)",
      "factor",
      { by: "chemistry", pick: column(TABLE, (row) => row.peukert) },
      { min: 1, max: 1.6, minor: true },
    ),
    given("test_load", "Test lamp", "power", [21, "W"], { min: 0.1 }),
    given(
      "tested_temperature",
      "Its warmth at the test",
      "temperature",
      { formula: "temperature" },
      { min: 263.15, max: 323.15, minor: true },
    ),
    hidden("test_cold", "Left in the cold of the test", "chilling", "share"),
    output("test_time", "Lamp would burn, from full", "lasting", "duration", {
      measurable: { teaches: "the battery's health" },
      keeps: ["tested_temperature"],
      relations: [`20 h * min(1, ${AT_TEST})^peukert * max(1, ${AT_TEST})`],
    }),
    output("health_in_use", "Left of its label", "testing", "share", {
      relations: [
        "min(1, test_time / 20 h)^(1 / peukert) * max(1, test_time / 20 h) * test_load * 20 h / (nominal_voltage * rated_capacity * test_cold)",
      ],
    }),
    ...VOLT_ROWS,
    output("cold_share", "Left of that in the cold", "weakening", "share", { minor: true }),
    output("haste_share", "Left of that at the pump's pace", "weakening", "share", {
      minor: true,
      relations: [
        "min(1, rated_capacity * health_in_use * nominal_voltage / (largest_load * 20 h))^(peukert - 1)",
      ],
    }),
    given("charge_noted", "Charge noted", "share", null, { max: 1, hidden: true, absent: "not noted" }),
    given("charge_today", "Charged at first to", "share", [100, "%"], { max: 1, minor: true }),
    formula(
      "usable_energy",
      "You can use",
      "energy",
      "rated_capacity * nominal_voltage * health_in_use * depth_of_discharge * cold_share * haste_share",
    ),
    ...LOAD_ROWS,
    hiddenFrom("panel", "charges")("panels", "Panels on it", "series", "charge_months", "list"),
    hidden("charge_by_month", "Charge by month", "charging", "series"),
    hidden("frost_months", "Months with frost", "charging", "count"),
    hidden("uncharged", "Nothing charges it", "charging", "count"),
    formula("pumping_time", "Runs the pump for", "duration", "usable_energy / largest_load", {
      none: [{ if: "largest_load <= 0 W", reason: "no pump with a known current runs on it" }],
    }),
    formula("waterings_per_charge", "Waterings a charge", "count", "floor(usable_energy / round_energy)", {
      none: [{ if: "round_energy <= 0 Wh", reason: "no pump with a known current waters a bed on it" }],
    }),
    formula(
      "days_without_sun",
      "Peak days without a charge",
      "span",
      "usable_energy / (peak_energy + other_energy) * 1 day",
      {
        none: [
          {
            if: "peak_energy + other_energy <= 0 Wh",
            reason: "no pump with a known current waters a bed on it",
          },
        ],
      },
    ),
    ...BATTERY_SEASON_ROWS,
    ...COSTS,
  ],
  models: [chilling, testingBattery, lasting, loading, weakening, volting, charging],
  cautions: BATTERY_CAUTIONS,
};
