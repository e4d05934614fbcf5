// A battery's volts and amperes: while it charges, and shorted.

import batteries from "../../../shared/batteries.json";
import type { Row } from "../../graph/types.ts";
import { gather, given, MEMORY, output } from "../rows.ts";
import { column } from "../tabled.ts";

export const VOLT_ROWS: readonly Row[] = [
  given(
    "inner_resistance",
    "Resists inside",
    "resistance",
    { by: "chemistry", pick: column(batteries.chemistries, (row) => row.inner_resistance) },
    "Of a whole one of the usual size, full and warm; its data sheet has it. A worn one has more.",
    { min: 1e-5, max: 10, minor: true, source: MEMORY },
  ),
  output(
    "charging_voltage",
    "Voltage while it charges",
    "volting",
    "voltage",
    "Its voltage times what its kind wants over it: a panel's current times this is the energy that goes in.",
    MEMORY,
    { minor: true },
  ),
  output(
    "short_current",
    "A dead short of it",
    "volting",
    "current",
    "Its voltage when full over what it resists inside.",
    "Ohm's law: I = V / R",
    { minor: true },
  ),
  output(
    "most_charging_current",
    "Bears while charging",
    "volting",
    "current",
    "Its printed amp-hours times what its kind bears for each of them.",
    MEMORY,
    { minor: true },
  ),
  gather(
    "charging_current",
    "Its panels push at most",
    "current",
    { kind: "panel", by: "charges", take: "charge_current", how: "sum" },
    "In full sun.",
    { minor: true },
  ),
];
