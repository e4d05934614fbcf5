// What a gravity line shows: its drop, its flow, its refill, and what its route does to it.

import type { Row } from "../../graph/types.ts";
import { formula, gather, hidden, output, STANDARD_GRAVITY } from "../rows.ts";
import { HUMP_ROWS } from "./hump-rows.ts";

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

const height = (name: string, label: string, of: string): Row => hidden(name, label, of, "height");

/** Kept for other rows to read. */
const HIDDEN: readonly Row[] = [
  height("start_height", "Starts at", "ends"),
  height("end_height", "Ends at", "ends"),
  height("source_water", "Upper tank's water", "ends"),
  height("full_source", "Upper tank's brim", "ends"),
  hidden("lift", "Less drop than by the heights", "ends", "head"),
  hidden("plain_head", "Drop between tanks", "ends", "head"),
  height("runs_from", "Runs from", "laying"),
  height("source_height", "Water above it at", "heights"),
  height("last_flow_height", "Stops at", "stopping"),
  height("end_water", "Its end at", "heights"),
  hidden("own_opening", "Opening by itself", "own_opening", "opening"),
  hidden("route_points", "Route with its ends", "laying", "series"),
  hidden("grade_line", "Grade line", "pressing", "series"),
  hidden("high_points", "High points", "pressing", "series"),
  hidden("must_stand_over", "Runs at all over", "passing", "height"),
  hidden("blocked", "Stopped by", "passing", "text"),
  hidden("refill_alone", "The same by this line alone", "after_watering", "duration"),
  hidden("falls_below", "End under the tank by", "open_end", "head"),
  formula(
    "siphon_limit",
    "Highest a siphon lifts",
    "head",
    "siphon_limit(site.elevation, site.water_temperature)",
    { hidden: true },
  ),
];

const FLOWS: readonly Row[] = [
  gather(
    "filters_k",
    "Its filters",
    "factor",
    { kind: "filter", by: "on", take: "k_in_use", how: "sum" },
    { minor: true },
  ),
  formula("all_k", "Fittings and filters", "factor", "fittings_k + filters_k", { minor: true }),
  formula("head", "Drop that drives it", "head", "source_height - end_water", {
    measurable: { teaches: "the drop itself, in place of the one from the cards' heights", min: -100 },
  }),
  output("opening", "Opening that counts", "teaching", "opening", {
    minor: true,
    measurable: { teaches: "what the valve lets through, however high its tanks are set" },
  }),
  output("flow", "Flow, float down", "running", "flow", {
    measurable: { teaches: "the valve's effective opening", lesson: "opening" },
    relations: [
      `opening * sqrt(2 * ${STANDARD_GRAVITY} * (head - friction_head))`,
      "velocity * 0.785398 * bore ^ 2",
    ],
  }),
];

const REFILLS: readonly Row[] = [
  output("refill_time", "Fills it again in", "filling", "duration", {
    measurable: { teaches: "the valve's effective opening", lesson: "opening" },
  }),
  output("refill_end", "A refill ends", "filling", "text", { options: ENDS, minor: true }),
  output("settles_at", "Otherwise stops at a depth of", "filling", "depth"),
  output("settles_volume", "Otherwise stops with this much in it", "filling", "volume", { minor: true }),
  output("refill_after_watering", "Refill after the largest watering", "sharing", "duration"),
  output("full_by", "Full again by", "finishing", "text"),
  output("ways", "Runs", "ends", "text", { options: WAYS, minor: true }),
];

const DETAILS: readonly Row[] = [
  output("velocity", "Speed in the hose", "running", "velocity", {
    minor: true,
    relations: ["flow / (0.785398 * bore ^ 2)"],
  }),
  output("reynolds", "Smooth or turbulent (Reynolds number)", "running", "count", {
    minor: true,
    relations: ["velocity * bore * site.water_density / site.water_viscosity"],
  }),
  output("friction_factor", "Friction factor of the hose", "running", "factor", { minor: true }),
  output("friction_head", "Eaten by hose and fittings", "running", "head", {
    minor: true,
    relations: [`(friction_factor * length / bore + all_k) * velocity ^ 2 / (2 * ${STANDARD_GRAVITY})`],
  }),
  formula("hose_holds", "The hose holds", "volume", "0.785398 * bore ^ 2 * length", { minor: true }),
  formula("comes_after", "First filled, water comes after", "duration", "hose_holds / flow", {
    minor: true,
    none: [{ if: "flow <= 0 gpm", reason: "nothing flows" }],
  }),
  output("purge_flow", "Clears itself of air from", "purging", "flow", { minor: true }),
];

export const LINE_RESULTS: readonly Row[] = [...HIDDEN, ...FLOWS, ...REFILLS, ...DETAILS, ...HUMP_ROWS];
