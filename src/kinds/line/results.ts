// What a gravity line shows: its drop, its flow, its refill, and what its route does to it.

import type { Row } from "../../graph/types.ts";
import { DEFINITION, formula, gather, output } from "../rows.ts";
import { CHURCHILL, ORIFICE } from "./hose.ts";
import { GRADE, HUMP_ROWS, SANKS } from "./hump-rows.ts";

const REFILL = `${CHURCHILL}; ${ORIFICE}; integrated`;

const ENDS = [
  { word: "fills", label: "fills" },
  { word: "never_starts", label: "never starts" },
  { word: "levels_equal", label: "levels equal" },
  { word: "source_dry", label: "the source gives out" },
  { word: "already_full", label: "full already" },
];
const WAYS = [
  { word: "one_way", label: "one way only" },
  { word: "both_ways", label: "both ways" },
];

const height = (name: string, label: string, of: string, words: string): Row =>
  output(name, label, of, "height", words, DEFINITION, { hidden: true });

/** Kept for other rows to read. */
const HIDDEN: readonly Row[] = [
  height("start_height", "Starts at", "ends", "Floor of the upper tank plus its outlet, or the joint."),
  height(
    "end_height",
    "Ends at",
    "ends",
    "Where the float shuts; an open end at the lower tank's outlet; a joint.",
  ),
  height("source_water", "Upper tank's water", "ends", "Height of the water in the upper tank."),
  height("full_source", "Upper tank's brim", "ends", "Height of the water in the upper tank when full."),
  output("plain_head", "Drop between tanks", "ends", "head", "Upper water less the end.", DEFINITION, {
    hidden: true,
  }),
  height("runs_from", "Runs from", "laying", "What the upper water must stand over for anything to run."),
  height(
    "source_height",
    "Water above it at",
    "heights",
    "Height of the water at its start, in a tank or a joint.",
  ),
  height(
    "last_flow_height",
    "Stops at",
    "stopping",
    "When the upper water has fallen to here, nothing runs any more.",
  ),
  height("end_water", "Its end at", "heights", "Height of its end, or of the water in the joint there."),
  output(
    "own_opening",
    "Opening by itself",
    "own_opening",
    "opening",
    "By the seat or a timed refill.",
    ORIFICE,
    {
      hidden: true,
    },
  ),
  output(
    "route_points",
    "Route with its ends",
    "laying",
    "series",
    "The points, ends included.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  output("grade_line", "Grade line", "pressing", "series", "Height to which water would stand.", GRADE, {
    hidden: true,
  }),
  output(
    "must_stand_over",
    "Runs at all over",
    "passing",
    "height",
    "Water that never stands over this never runs out at its far end.",
    DEFINITION,
    { hidden: true },
  ),
  output("blocked", "Stopped by", "passing", "text", "Why no water can pass.", DEFINITION, { hidden: true }),
  output(
    "falls_below",
    "End under the tank by",
    "open_end",
    "head",
    "Upper floor less the open end.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  formula(
    "siphon_limit",
    "Highest a siphon lifts",
    "head",
    "siphon_limit(site.elevation, site.water_temperature)",
    "What the air's weight lifts here, less the water's vapour.",
    "hydrostatics; ICAO Doc 7488",
    { hidden: true },
  ),
];

const FLOWS: readonly Row[] = [
  gather(
    "filters_k",
    "Its filters",
    "factor",
    { kind: "filter", by: "on", take: "k_in_use", how: "sum" },
    "The loss of every filter in it, as clogged as it gets.",
    { minor: true },
  ),
  formula(
    "all_k",
    "Fittings and filters",
    "factor",
    "fittings_k + filters_k",
    "All losses but the hose's own and the valve's, on the speed in the hose.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "head",
    "Drop that drives it",
    "head",
    "source_height - end_water",
    "The height of the upper water above the end of the line.",
    DEFINITION,
    { measurable: { teaches: "the drop itself, in place of the one from the cards' heights" } },
  ),
  output(
    "opening",
    "Effective opening",
    "teaching",
    "opening",
    "What the valve lets through: its hole times its coefficient, or what your refill or bucket taught.",
    ORIFICE,
    {
      minor: true,
      measurable: { teaches: "what the valve lets through, however high its tanks are set" },
    },
  ),
  output(
    "flow",
    "Flow, float down",
    "running",
    "flow",
    "The flow at which friction, fittings and valve together use up the drop.",
    `${CHURCHILL}; ${ORIFICE}`,
    {
      measurable: { teaches: "the valve's effective opening", lesson: "opening" },
      relations: [
        "opening * sqrt(2 * 9.80665 m/s2 * (head - friction_head))",
        "velocity * 0.785398 * bore ^ 2",
      ],
    },
  ),
];

const REFILLS: readonly Row[] = [
  output(
    "refill_time",
    "Fills it again in",
    "filling",
    "duration",
    "From the lowest you can draw it to, until the float shuts, with both waters moving; at a joint, with the other floats shut.",
    REFILL,
    { measurable: { teaches: "the valve's effective opening", lesson: "opening" } },
  ),
  output("refill_end", "A refill ends", "filling", "text", "How filling the lower tank ends.", REFILL, {
    options: ENDS,
    minor: true,
  }),
  output(
    "settles_at",
    "Otherwise stops at a depth of",
    "filling",
    "depth",
    "The depth in the lower tank at which the levels meet or the source gives out.",
    "continuity of both tanks",
  ),
  output(
    "settles_volume",
    "With this much in it",
    "filling",
    "volume",
    "The water in the lower tank at that depth.",
    "continuity of both tanks",
    { minor: true },
  ),
  output(
    "refill_after_watering",
    "After the largest watering",
    "after_watering",
    "duration",
    "From the level that the largest single watering leaves, until the float shuts.",
    REFILL,
  ),
  output(
    "full_by",
    "Full again by",
    "finishing",
    "text",
    "The hour of watering plus the refill after the largest watering.",
    DEFINITION,
  ),
  output(
    "ways",
    "Runs",
    "ends",
    "text",
    "Back too, where neither float nor check valve stops it.",
    DEFINITION,
    {
      options: WAYS,
      minor: true,
    },
  ),
];

const DETAILS: readonly Row[] = [
  output("velocity", "Speed in the hose", "running", "velocity", "Flow over the bore's area.", DEFINITION, {
    minor: true,
    relations: ["flow / (0.785398 * bore ^ 2)"],
  }),
  output(
    "reynolds",
    "Reynolds number",
    "running",
    "count",
    "Under about 2000 the flow is smooth, over 4000 it is turbulent; between them any figure is doubtful by a third.",
    DEFINITION,
    { minor: true, relations: ["velocity * bore * site.water_density / site.water_viscosity"] },
  ),
  output(
    "friction_factor",
    "Friction factor of the hose",
    "running",
    "factor",
    "How hard the hose's wall holds the water back, by its Reynolds number and its roughness over its bore.",
    CHURCHILL,
    { minor: true },
  ),
  output(
    "friction_head",
    "Eaten by hose and fittings",
    "running",
    "head",
    "The part of the drop that hose and fittings use up; the valve uses the rest.",
    CHURCHILL,
    {
      minor: true,
      relations: ["(friction_factor * length / bore + all_k) * velocity ^ 2 / (2 * 9.80665 m/s2)"],
    },
  ),
  output(
    "purge_flow",
    "Clears its own air from",
    "purging",
    "flow",
    "The flow that sweeps an air bubble along a level hose of this bore.",
    SANKS,
    { minor: true },
  ),
];

export const LINE_RESULTS: readonly Row[] = [...HIDDEN, ...FLOWS, ...REFILLS, ...DETAILS, ...HUMP_ROWS];
