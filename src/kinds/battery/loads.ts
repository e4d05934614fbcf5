// What the pumps on a battery ask of it, whether through a card of their own or straight from a hose.

import type { Row } from "../../graph/types.ts";
import { DAY } from "../../units/constants.ts";
import { formula, given, hiddenFrom, output } from "../rows.ts";

const fromHoses = hiddenFrom("delivery", "powered_by");
const fromPumps = hiddenFrom("pump", "powered_by");

export const LOAD_ROWS: readonly Row[] = [
  given("other_power", "Other loads on it", "power", [0, "W"], { minor: true, max: 1000 }),
  given("other_time", "They run a day for", "duration", [24, "h"], { minor: true, max: DAY }),
  formula("other_energy", "They take a day", "energy", "other_power * other_time", { minor: true }),
  fromHoses("largest_by_hose", "Largest load, hoses straight on it", "series", "own_drawn_power", "list"),
  fromPumps("largest_by_pump", "Largest load, pumps on it", "series", "running_power", "list"),
  fromHoses("round_by_hose", "One watering by hoses straight on it", "energy", "own_round_energy", "sum"),
  fromPumps("round_by_pump", "One watering by pumps on it", "energy", "round_energy", "sum"),
  fromHoses("peak_by_hose", "A peak day of hoses straight on it", "energy", "own_peak_energy", "sum"),
  fromPumps("peak_by_pump", "A peak day of pumps on it", "energy", "peak_energy", "sum"),
  output("largest_load", "Largest load", "loading", "power", { minor: true }),
  formula("round_energy", "One watering of all beds takes", "energy", "round_by_hose + round_by_pump", {
    minor: true,
  }),
  formula("peak_energy", "A peak day takes", "energy", "peak_by_hose + peak_by_pump", { minor: true }),
];
