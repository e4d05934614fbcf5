// A solar panel: its label and its stand, what it puts into a battery, and whether it drives a pump by itself.

import panels from "../../../shared/panels.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, choice, date, formula, gather, given, hidden, link, output } from "../rows.ts";
import { column, options, typed } from "../tabled.ts";
import { PANEL_CAUTIONS } from "./cautions.ts";
import { driving } from "./direct.ts";
import { chargingModel, supplying, testingPanel } from "./models.ts";
import { panelSeason } from "./season.ts";
import { PANEL_SPANS } from "./spans.ts";

const KINDS = panels.panels;

const GIVENS: readonly Row[] = [
  choice("cells", "Kind", options(KINDS), "cells_36"),
  given(
    "rated_power",
    "Rated",
    "power",
    { by: "cells", pick: column(KINDS, (kind) => kind.rated_power) },
    { min: 0.1 },
  ),
  given(
    "voc",
    "Voltage, no load",
    "voltage",
    { by: "cells", pick: column(KINDS, (kind) => kind.voc) },
    { min: 1, max: 600, minor: true },
  ),
  given(
    "vmp",
    "Voltage at its best",
    "voltage",
    { by: "cells", pick: column(KINDS, (kind) => kind.vmp) },
    { min: 1, max: 600, minor: true },
  ),
  given(
    "imp",
    "Current at its best",
    "current",
    { formula: "rated_power / vmp" },
    { min: 0.01, minor: true },
  ),
  given("isc", "Current, shorted", "current", { formula: "imp * 1.08" }, { min: 0.01, minor: true }),
  given("health", "Left of that", "share", [90, "%"], { min: 0.01, max: 1.2 }),
  given("noon_current", "Shorted at a clear noon", "current", null, {
    absent: "not tested",
    min: 0.001,
    minor: true,
  }),
  date("noon_day", "On the day", "month_day", null, "not tested"),
  given("count", "How many", "count", [1, "1"], { min: 1, max: 100 }),
  given("tilt", "Tilt from level", "angle", [35, "deg"], { max: 1.5708 }),
  given("azimuth", "Faces", "angle", [180, "deg"], { max: 6.2832 }),
  given("losses", "Lost to dirt and shade", "share", typed(panels.losses), { max: 0.99 }),
  choice(
    "controller",
    "Between it and the battery",
    { none: "nothing", pwm: "a plain controller (PWM)", mppt: "a tracking one (MPPT)" },
    "pwm",
  ),
  link("charges", "Charges", "stores_power", "charges no battery"),
];

/** Only where a pump hangs on it alone. */
const ALONE = { when: { row: "drives", is: ["1"] } } as const;

const share = (name: string, label: string): Row => output(name, label, "driving", "share", ALONE);

const RESULTS: readonly Row[] = [
  output("tested_health", "Health by that noon", "testing", "share", { minor: true }),
  hidden("health_in_use", "Reckoned with", "testing", "share"),
  gather(
    "wire_resistance",
    "Wire of its pump",
    "resistance",
    { kind: "pump", by: "powered_by", take: "wire_resistance", how: "sum" },
    { hidden: true },
  ),
  gather(
    "pumps",
    "Pumps on it alone",
    "series",
    { kind: "pump", by: "powered_by", take: "liftings", how: "list" },
    { hidden: true },
  ),
  hidden("supply", "Its light by month", "supplying", "series"),
  hidden("charge_months", "Charge by month", "charging", "series"),
  hidden("monthly_energy", "Charge of a mean day, by month", "charging", "series"),
  hidden("by_month", "Month by month", "charging", "series"),
  output("daily_energy", "Puts in on a mean day", "charging", "energy"),
  output("worst_month", "That month", "charging", "text", { minor: true }),
  formula(
    "recharge_time",
    "Fills the battery in",
    "span",
    "charges.usable_energy / (daily_energy * charges.round_trip_efficiency) * 1 day",
    { none: [{ if: "daily_energy <= 0 Wh", reason: "no sun reaches it in that month" }] },
  ),
  output("direct_hours", "Drives the pump, a clear day", "driving", "duration", ALONE),
  output("direct_full_hours", "Of that, fully", "driving", "duration", { ...ALONE, minor: true }),
  share("direct_flow_share", "Share of full flow when you water"),
  share("share_early", "The same at nine, by the sun"),
  share("share_noon", "The same at noon"),
  share("share_late", "The same at three, by the sun"),
  share("share_overcast", "The same at noon, under cloud"),
  output("highest_voltage", "Highest voltage at the pump", "driving", "voltage", { ...ALONE, minor: true }),
  hidden("drives", "Drives a pump alone", "driving", "count"),
  hidden("overvoltage", "Over its stated one", "driving", "factor"),
  hidden("direct_day", "Through the day", "driving", "series"),
  output("watts_over_pump", "Its watts over the pump's", "driving", "factor", { ...ALONE, minor: true }),
  hidden("volts_over_pump", "Its volts over the most that suits", "driving", "factor"),
  ...COSTS,
];

export const panel: Kind = {
  kind: "panel",
  label: "Solar panel",
  purpose: "Charges a battery, or drives a pump by itself while the sun is high.",
  group: "Power",
  season: panelSeason,
  icon: { ink: "M3 18 7 6h14l-4 12zM5 12h14M12 6 9 18", tone: "M17 2l1-1M21 3l-2 1", color: "power" },
  uses: ["gives_power"],
  joins: { charges: "newest" },
  drawn: {
    as: "panel",
    beside: [
      { row: "daily_energy", tint: "power", text: "{} a day", ifLinked: "charges" },
      { row: "direct_hours", tint: "power", text: "pumps {} a clear day", unlessLinked: "charges" },
    ],
    spoken: "{title} charges {charges|no battery}",
  },
  glance: ["share_noon", "daily_energy", "direct_hours", "recharge_time"],
  spans: PANEL_SPANS,
  rows: [...GIVENS, ...RESULTS],
  figures: [
    { row: "by_month", title: "What it puts in, month by month" },
    { row: "direct_day", title: "The panel alone, hour by hour" },
  ],
  models: [testingPanel, supplying, chargingModel, driving],
  cautions: PANEL_CAUTIONS,
};
