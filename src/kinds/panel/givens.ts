// What a panel's owner knows of it: its label, its stand, what was tried on it.

import panels from "../../../shared/panels.json";
import type { Row } from "../../graph/types.ts";
import { choice, date, given, link } from "../rows.ts";
import { column, options, typed } from "../tabled.ts";

const KINDS = panels.panels;

export const GIVENS: readonly Row[] = [
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
  choice("noon_clean", "Wiped clean for it", { no: "no, as it was", yes: "yes" }, "no", { minor: true }),
  date("noon_day", "Day of that noon", "month_day", null, "not tested"),
  given("count", "How many", "count", [1, "1"], { min: 1, max: 100 }),
  given("tilt", "Tilt from level", "angle", [35, "deg"], { max: 1.5708 }),
  given("azimuth", "Faces", "angle", [180, "deg"], { max: 6.2832, sizeless: true }),
  given("dirt", "Lost to dirt alone", "share", typed(panels.dirt), { max: 0.9, minor: true }),
  given("losses", "Lost to dirt and shade", "share", typed(panels.losses), { max: 0.99 }),
  choice(
    "controller",
    "Between it and the battery",
    { none: "nothing", pwm: "a plain controller (PWM)", mppt: "a tracking one (MPPT)" },
    "pwm",
  ),
  link("charges", "Charges", "stores_power", "charges no battery"),
];
