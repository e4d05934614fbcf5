// What a panel's owner knows of it: its label, its stand, what was tried on it.

import panels from "../../../shared/panels.json";
import type { Row } from "../../graph/types.ts";
import { choice, date, given, link, MEMORY, PRACTICE } from "../rows.ts";
import { column, options, typed } from "../tabled.ts";

const KINDS = panels.panels;

export const GIVENS: readonly Row[] = [
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
