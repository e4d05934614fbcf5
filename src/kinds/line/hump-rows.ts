// What a gravity line shows of its humps: siphon, suction and trapped air, how much and where.

import type { Row } from "../../graph/types.ts";
import { output } from "../rows.ts";

const along = (name: string, label: string, of: string): Row =>
  output(name, label, of, "distance", { minor: true });
const over = (name: string, label: string): Row => output(name, label, "pressing", "head", { minor: true });

export const HUMP_ROWS: readonly Row[] = [
  output("hump_height", "Highest hump", "laying", "height", { minor: true }),
  along("hump_at", "Hump lies at", "laying"),
  over("siphon_by", "Hump over the upper water"),
  over("suction_by", "Hose under suction by"),
  along("suction_at", "Suction lies at", "pressing"),
  over("air_head", "Trapped air may take"),
  along("air_at", "Air stays at", "pressing"),
];
