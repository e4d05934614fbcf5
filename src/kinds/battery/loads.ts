// What the pumps on a battery ask of it, whether through a card of their own or straight from a hose.

import type { Row } from "../../graph/types.ts";
import { formula, gather, given, output } from "../rows.ts";

export const LOAD_ROWS: readonly Row[] = [
  given("other_power", "Other loads on it", "power", [0, "W"], { minor: true, max: 1000 }),
  given("other_time", "They run a day for", "duration", [24, "h"], { minor: true, max: 86_400 }),
  formula("other_energy", "They take a day", "energy", "other_power * other_time", { minor: true }),
  gather(
    "largest_by_hose",
    "Largest load, hoses straight on it",
    "series",
    { kind: "delivery", by: "powered_by", take: "own_drawn_power", how: "list" },
    { hidden: true },
  ),
  gather(
    "largest_by_pump",
    "Largest load, pumps on it",
    "series",
    { kind: "pump", by: "powered_by", take: "running_power", how: "list" },
    { hidden: true },
  ),
  gather(
    "round_by_hose",
    "One watering of all beds takes, hoses straight on it",
    "energy",
    { kind: "delivery", by: "powered_by", take: "own_round_energy", how: "sum" },
    { hidden: true },
  ),
  gather(
    "round_by_pump",
    "One watering of all beds takes, pumps on it",
    "energy",
    { kind: "pump", by: "powered_by", take: "round_energy", how: "sum" },
    { hidden: true },
  ),
  gather(
    "peak_by_hose",
    "A peak day takes, hoses straight on it",
    "energy",
    { kind: "delivery", by: "powered_by", take: "own_peak_energy", how: "sum" },
    { hidden: true },
  ),
  gather(
    "peak_by_pump",
    "A peak day takes, pumps on it",
    "energy",
    { kind: "pump", by: "powered_by", take: "peak_energy", how: "sum" },
    { hidden: true },
  ),
  output("largest_load", "Largest load", "loading", "power", { minor: true }),
  formula("round_energy", "One watering of all beds takes", "energy", "round_by_hose + round_by_pump", {
    minor: true,
  }),
  formula("peak_energy", "A peak day takes", "energy", "peak_by_hose + peak_by_pump", { minor: true }),
];
