// A battery's volts and amperes: while it charges, and shorted.

import batteries from "../../../shared/batteries.json";
import type { Row } from "../../graph/types.ts";
import { gather, given, output } from "../rows.ts";
import { column } from "../tabled.ts";

export const VOLT_ROWS: readonly Row[] = [
  given(
    "inner_resistance",
    "Resists inside",
    "resistance",
    { by: "chemistry", pick: column(batteries.chemistries, (row) => row.inner_resistance) },
    { min: 1e-5, max: 10, minor: true },
  ),
  output("charging_voltage", "Voltage while it charges", "volting", "voltage", { minor: true }),
  output("short_current", "A dead short of it", "volting", "current", { minor: true }),
  output("most_charging_current", "Bears while charging", "volting", "current", { minor: true }),
  gather(
    "charging_current",
    "Its panels push at most",
    "current",
    { kind: "panel", by: "charges", take: "charge_current", how: "sum" },
    { minor: true },
  ),
];
