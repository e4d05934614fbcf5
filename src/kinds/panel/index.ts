// A solar panel: its label and its stand, what it puts into a battery, and whether it drives a pump by itself.

import panels from "../../../shared/panels.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import {
  COSTS,
  choice,
  DEFINITION,
  date,
  formula,
  gather,
  given,
  link,
  MEMORY,
  output,
  PRACTICE,
} from "../rows.ts";
import { column, options, typed } from "../tabled.ts";
import { PANEL_CAUTIONS } from "./cautions.ts";
import { driving } from "./direct.ts";
import { chargingModel, facing, supplying, testingPanel, tracking } from "./models.ts";
import { PANEL_SPANS } from "./spans.ts";

const KINDS = panels.panels;
const SKY =
  "Hargreaves or measured sunshine; Collares-Pereira and Rabl; Erbs; isotropic sky, as in Duffie and Beckman ch. 2";
const LOAD_LINE = "the pump's load line against the panel's curve through its label's points";

const GIVENS: readonly Row[] = [
  choice("cells", "Kind", options(KINDS), "cells_36", "Count the squares on it."),
  given(
    "rated_power",
    "Rated",
    "power",
    { by: "cells", pick: column(KINDS, (kind) => kind.rated_power) },
    "On its back.",
    { min: 0.1, source: PRACTICE },
  ),
  given(
    "voc",
    "Voltage, no load",
    "voltage",
    { by: "cells", pick: column(KINDS, (kind) => kind.voc) },
    "Voc on its back.",
    { min: 1, max: 600, minor: true, source: MEMORY },
  ),
  given(
    "vmp",
    "Voltage at its best",
    "voltage",
    { by: "cells", pick: column(KINDS, (kind) => kind.vmp) },
    "Vmp on its back.",
    { min: 1, max: 600, minor: true, source: MEMORY },
  ),
  given("imp", "Current at its best", "current", { formula: "rated_power / vmp" }, "Imp on its back.", {
    min: 0.01,
    minor: true,
  }),
  given(
    "isc",
    "Current, shorted",
    "current",
    { formula: "imp * 1.08" },
    "Isc on its back; usually some 8 % over Imp.",
    { min: 0.01, minor: true, source: MEMORY },
  ),
  given(
    "health",
    "Left of that",
    "share",
    [90, "%"],
    "A second-hand one has lost some. A clear noon tells.",
    { min: 0.01, max: 1.2, source: "guessed until tested" },
  ),
  given(
    "noon_current",
    "Shorted at a clear noon",
    "current",
    null,
    "All of them together, where they stand, through a meter that bears it: a moment only.",
    { absent: "not tested", min: 0.001, minor: true },
  ),
  choice(
    "noon_clean",
    "Wiped clean for it",
    { no: "no, as it was", yes: "yes" },
    "no",
    "Dirt counts among its losses; it must not count in its health as well.",
    { minor: true },
  ),
  date("noon_day", "On the day", "month_day", null, "Of that test.", "not tested"),
  given("count", "How many", "count", [1, "1"], "Side by side, plus to plus.", { min: 1, max: 100 }),
  given("tilt", "Tilt from level", "angle", [35, "deg"], "0 lies flat, 90 hangs on a wall.", { max: 1.5708 }),
  given("azimuth", "Faces", "angle", [180, "deg"], "By compass from north: 90 east, 180 south, 270 west.", {
    max: 6.2832,
  }),
  given(
    "dirt",
    "Of that, dirt",
    "share",
    typed(panels.dirt),
    "What dust and leaves on the glass take before it is wiped.",
    { max: 0.9, minor: true, source: MEMORY },
  ),
  given(
    "losses",
    "Lost to dirt and shade",
    "share",
    typed(panels.losses),
    "Dirt, shade, wire and mismatch; its heat is reckoned by itself.",
    { max: 0.99, source: PRACTICE },
  ),
  choice(
    "controller",
    "Between it and the battery",
    { none: "nothing", pwm: "a plain controller (PWM)", mppt: "a tracking one (MPPT)" },
    "pwm",
    "A plain one holds the panel down at the battery's voltage.",
  ),
  link("charges", "Charges", "stores_power", "charges no battery", "The battery behind it."),
];

/** Only where a pump hangs on it alone. */
const ALONE = { when: { row: "drives", is: ["1"] } } as const;

const share = (name: string, label: string, words: string): Row =>
  output(name, label, "driving", "share", words, LOAD_LINE, ALONE);

const RESULTS: readonly Row[] = [
  output(
    "tested_health",
    "Health by that noon",
    "testing",
    "share",
    "Its shorted current over the label's in a clear noon's light.",
    "FAO-56 Eq. 37 for the clear sky; current in proportion to light",
    { minor: true },
  ),
  output("health_in_use", "Reckoned with", "testing", "share", "Tested, else as guessed.", DEFINITION, {
    hidden: true,
  }),
  formula(
    "rating_of_points",
    "Watts by its points",
    "power",
    "vmp * imp",
    "Best voltage times best current.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  formula(
    "charge_current",
    "Pushes into it at most",
    "current",
    "count * health_in_use * (isc + tracks * (rated_power / charges.charging_voltage - isc))",
    "In full sun: its shorted current by a plain controller; by a tracking one its watts over the battery's voltage while it charges.",
    DEFINITION,
    { minor: true, quiet: true },
  ),
  output("tracks", "Tracks", "tracking", "count", "1 for a tracking controller.", DEFINITION, {
    hidden: true,
  }),
  output("faces_away", "Turns its back", "facing", "count", "1 where it does.", DEFINITION, { hidden: true }),
  formula("whole_short", "All of it, shorted", "current", "isc * count", "In full sun.", DEFINITION, {
    hidden: true,
  }),
  gather(
    "wire_resistance",
    "Wire of its pump",
    "resistance",
    { kind: "pump", by: "powered_by", take: "wire_resistance", how: "sum" },
    "Both ways.",
    { hidden: true },
  ),
  gather(
    "pumps",
    "Pumps on it alone",
    "series",
    { kind: "pump", by: "powered_by", take: "liftings", how: "list" },
    "Each with its hoses.",
    { hidden: true },
  ),
  output("supply", "Its light by month", "supplying", "series", "At the hour of watering.", SKY, {
    hidden: true,
  }),
  output("charge_months", "Charge by month", "charging", "series", "On dry and wet days.", SKY, {
    hidden: true,
  }),
  output("monthly_energy", "Charge of a mean day, by month", "charging", "series", "January first.", SKY, {
    hidden: true,
  }),
  output("by_month", "Month by month", "charging", "series", "Dry, wet and mean days.", SKY, {
    hidden: true,
  }),
  output(
    "daily_energy",
    "Puts in on a mean day",
    "charging",
    "energy",
    "Of the season's worst month, into a battery of 12 V or the one that it charges, before that battery's own losses.",
    SKY,
  ),
  output("worst_month", "That month", "charging", "text", "The month of the season with the least.", SKY, {
    minor: true,
  }),
  formula(
    "recharge_time",
    "Fills the battery in",
    "span",
    "charges.usable_energy / (daily_energy * charges.round_trip_efficiency) * 1 day",
    "From its lowest, in that month: what may be used over a day's charge less the battery's losses.",
    DEFINITION,
    { none: [{ if: "daily_energy <= 0 Wh", reason: "no sun reaches it in that month" }] },
  ),
  output(
    "direct_hours",
    "Drives the pump, a clear day",
    "driving",
    "duration",
    "Any water at all, on a clear day in the middle of the season.",
    LOAD_LINE,
    ALONE,
  ),
  output(
    "direct_full_hours",
    "Of that, fully",
    "driving",
    "duration",
    "At least 95 % of the flow at the pump's stated voltage.",
    LOAD_LINE,
    { ...ALONE, minor: true },
  ),
  share(
    "direct_flow_share",
    "Share of full flow when you water",
    "On a dry day, at the hour of watering by the sun, in the month of the season with least light then.",
  ),
  share("share_early", "The same at nine, by the sun", "On a clear day in the middle of the season."),
  share("share_noon", "The same at noon", "On a clear day in the middle of the season."),
  share("share_late", "The same at three, by the sun", "On a clear day in the middle of the season."),
  share(
    "share_overcast",
    "The same at noon, under cloud",
    "With a fifth of the clear day's light, from memory.",
  ),
  output(
    "highest_voltage",
    "Highest voltage at the pump",
    "driving",
    "voltage",
    "On that clear day: the panel's voltage where it gives just what the pump draws, less the wire's.",
    LOAD_LINE,
    { ...ALONE, minor: true },
  ),
  output("drives", "Drives a pump alone", "driving", "count", "1 where it does.", DEFINITION, {
    hidden: true,
  }),
  output("overvoltage", "Over its stated one", "driving", "factor", "That over the stated one.", DEFINITION, {
    hidden: true,
  }),
  output("direct_day", "Through the day", "driving", "series", "Hour by hour.", LOAD_LINE, { hidden: true }),
  output(
    "watts_over_pump",
    "Its watts over the pump's",
    "driving",
    "factor",
    "Its best voltage times current, times its health and how many, over the pump's stated voltage times its current wide open.",
    DEFINITION,
    { ...ALONE, minor: true },
  ),
  output(
    "volts_over_pump",
    "Its volts over the most that suits",
    "driving",
    "factor",
    "Best voltage over 1.65 times the pump's stated one.",
    PRACTICE,
    { hidden: true },
  ),
  ...COSTS,
];

export const panel: Kind = {
  kind: "panel",
  label: "Solar panel",
  purpose: "Charges a battery, or drives a pump by itself while the sun is high.",
  group: "Power",
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
  models: [testingPanel, facing, tracking, supplying, chargingModel, driving],
  cautions: PANEL_CAUTIONS,
};
