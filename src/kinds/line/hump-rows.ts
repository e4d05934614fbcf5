// What a gravity line shows of its humps: siphon, suction and trapped air, how much and where.

import type { Row } from "../../graph/types.ts";
import { DEFINITION, output } from "../rows.ts";

export const SANKS = "Sanks, Pumping Station Design, as quoted in trade discussion; read second-hand";
export const GRADE = "definition of the hydraulic grade line; friction spread evenly along one bore";

const along = (name: string, label: string, of: string, words: string, source: string): Row =>
  output(name, label, of, "distance", words, source, { minor: true });
const over = (name: string, label: string, words: string, source: string): Row =>
  output(name, label, "pressing", "head", words, source, { minor: true });

export const HUMP_ROWS: readonly Row[] = [
  output(
    "hump_height",
    "Highest hump",
    "laying",
    "height",
    "Where the route climbs and falls again.",
    DEFINITION,
    {
      minor: true,
    },
  ),
  along("hump_at", "It lies at", "laying", "Along the hose from its start.", DEFINITION),
  over(
    "siphon_by",
    "Hump over the upper water",
    "The highest hump less the water in the upper tank.",
    DEFINITION,
  ),
  over(
    "suction_by",
    "Hose over its grade line",
    "How far a hump stands over the height that the water has left.",
    GRADE,
  ),
  along("suction_at", "There at", "pressing", "Along the hose from its start.", GRADE),
  over(
    "air_head",
    "Trapped air may take",
    "The rises to all humps that the flow is too slow to clear of air.",
    `an air pocket costs its own height: May, Allen and Nelson 2018, abstract read; ${SANKS}`,
  ),
  along("air_at", "Air stays at", "pressing", "Along the hose from its start.", SANKS),
];
