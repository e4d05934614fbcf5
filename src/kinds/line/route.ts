// The way a gravity line lies: its humps, the grade line over it, siphons and trapped air.

import { all, outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import {
  type GradeLine,
  gradeLine,
  type Hump,
  humpsOf,
  type RoutePoint,
  type RouteTrouble,
  routeTroubles,
} from "../../physics/air-lock.ts";
import { orificeHead } from "../../physics/orifice.ts";
import { boreArea } from "../../physics/pipe-friction.ts";
import { GRAVITY } from "../../units/constants.ts";

const NO_ROUTE = "no route given";
/** Loss of a flush entry on the speed's own head; Environmentally Conscious Materials Handling, Table 9.2 (read). */
const ENTRY_K = 0.5;
/** A route measured along the hose may be this much longer than the length given. */
const SLACK = 1.001;

function pointsOf(input: ModelInput): readonly RoutePoint[] {
  const list = input.values["route"];
  if (!Array.isArray(list)) return [];
  return list.map((point: readonly number[]) => ({ distance: point[0] ?? 0, height: point[1] ?? 0 }));
}

function problemOf(points: readonly RoutePoint[], length: number): Outcome | null {
  const back = points.findIndex(
    (point, index) => index > 0 && point.distance <= (points[index - 1]?.distance ?? 0),
  );
  if (back > 0)
    return {
      failed: `Point ${back + 1} of the route lies no further along than the one before it.`,
      by: "route",
    };
  if ((points[points.length - 1]?.distance ?? 0) > length * SLACK)
    return {
      failed: "The route is longer than the line: distances are measured along the hose.",
      by: "length",
    };
  return null;
}

/** The points given, with the line's own ends where they stop short of them. */
function completed(points: readonly RoutePoint[], length: number, start: number, end: number) {
  const first = points[0];
  const last = points[points.length - 1];
  return [
    ...(first && first.distance > 0 ? [{ distance: 0, height: start }] : []),
    ...points,
    ...(last && last.distance < length ? [{ distance: length, height: end }] : []),
  ];
}

const LAY = ["route_points", "hump_height", "hump_at", "runs_from"];

/**
 * The height that the water before a line must stand over. A joint above that water is a hump like any other: over either,
 * a line runs only where it is kept primed, and one that starts at a joint then as far under it as a siphon lifts.
 */
function runsFrom(input: ModelInput, hump: number): number {
  const start = numberOf(input, "start_height");
  if (wordOf(input, "primed") === "yes")
    return numberOrNull(input, "from.height") === null ? start : start - numberOf(input, "siphon_limit");
  return Math.max(start, hump, numberOrNull(input, "to.height") ?? -Infinity);
}

function layOf(input: ModelInput): Outputs {
  const start = numberOf(input, "start_height");
  const points = pointsOf(input);
  const level = { runs_from: { value: runsFrom(input, -Infinity) } };
  if (points.length === 0)
    return { ...all(["route_points", "hump_height", "hump_at"], { none: NO_ROUTE }), ...level };
  const length = numberOf(input, "length");
  const problem = problemOf(points, length);
  if (problem) return all(LAY, problem);
  const route = completed(points, length, start, numberOf(input, "end_height"));
  const humps = humpsOf(route);
  if (humps.length === 0) {
    const flat = all(["hump_height", "hump_at"], { none: "it has no hump" });
    return { ...flat, route_points: { value: route }, ...level };
  }
  const top = humps.reduce((highest, hump) => (hump.height > highest.height ? hump : highest));
  return outcomes({
    route_points: route,
    hump_height: top.height,
    hump_at: top.distance,
    runs_from: runsFrom(input, top.height),
  });
}

/** The route as it lies, its highest hump, and the height that the upper water must pass for anything to run. */
export const laying: Model = {
  name: "laying",
  takes: [
    "route",
    "length",
    "start_height",
    "end_height",
    "primed",
    "siphon_limit",
    "from.height",
    "to.height",
  ],
  optional: ["route", "from.height", "to.height"],
  outputs: LAY,
  run: layOf,
};

/** What must be known of a line for anything to be said of what it carries. */
const OF_HOSE = ["length", "bore", "roughness", "all_k", "valve_band", "check_valve"];
const PASSING = ["must_stand_over", "blocked"];

/** Height at which it ends, by a measured drop where there is one [m]. */
const countedEnd = (input: ModelInput): number => numberOf(input, "end_height") + numberOf(input, "lift");

/** Height that water must stand over for any ever to come out at the far end, whichever the reason [m]. */
function mustStandOver(input: ModelInput): number {
  const hump = topOf(input);
  // Between two tanks water may still run the other way, and at a joint it may be drawn over where it is kept primed.
  const mayEndHigher = wordOf(input, "ways") === "both_ways" || numberOrNull(input, "to.height") !== null;
  return Math.max(
    numberOf(input, "runs_from"),
    mayEndHigher ? -Infinity : countedEnd(input),
    hump - numberOf(input, "siphon_limit"),
  );
}

/** The highest that water has to climb to on its way: over its hump, or to the joint at its end; -Infinity: neither [m]. */
const topOf = (input: ModelInput): number =>
  Math.max(numberOrNull(input, "hump_height") ?? -Infinity, numberOrNull(input, "to.height") ?? -Infinity);

function whyBlocked(input: ModelInput, over: number): string | null {
  if (numberOrNull(input, "measured.opening") === 0) return "its valve does not open";
  const [top, full] = [topOf(input), numberOrNull(input, "full_source")];
  if (full === null || full > over) return null;
  const name = top === numberOrNull(input, "hump_height") ? "its hump" : "the joint at its end";
  if (top > full + numberOf(input, "siphon_limit")) return `${name} is higher than any siphon can lift`;
  const unprimed = numberOf(input, "runs_from") > numberOf(input, "start_height");
  if (unprimed && top >= full) return `${name} stands above the upper tank's brim, and it is not primed`;
  return over === countedEnd(input)
    ? "its far end is as high as the upper tank's brim"
    : "it starts as high as the upper tank's brim";
}

/** Why no water can ever pass, however full the upper tank is. */
export const passing: Model = {
  name: "passing",
  takes: [
    "hump_height",
    "runs_from",
    "start_height",
    "end_height",
    "lift",
    "full_source",
    "siphon_limit",
    "ways",
    "to.height",
    "measured.opening",
    ...OF_HOSE,
  ],
  optional: ["hump_height", "full_source", "to.height", "measured.opening"],
  outputs: PASSING,
  run: (input) => {
    const over = mustStandOver(input);
    const why = whyBlocked(input, over);
    return {
      must_stand_over: { value: over },
      blocked: why === null ? { none: "water can pass" } : { value: why },
    };
  },
};

/** Less than this over the water is what rounding leaves of a hump level with it [m]. */
const LEVEL_WITH = 1e-9;

const PRESSING = ["grade_line", "high_points", "siphon_by", "suction_by", "suction_at", "air_head", "air_at"];

/** A high point of a line as it lies, and what the water does there; null: nothing to mind. */
export type HighPoint = Hump & { readonly trouble: RouteTrouble["kind"] | null };

const highPointsOf = (
  route: readonly RoutePoint[],
  troubles: readonly RouteTrouble[],
): readonly HighPoint[] =>
  humpsOf(route).map((hump) => ({
    ...hump,
    trouble: troubles.find(({ distance }) => distance === hump.distance)?.kind ?? null,
  }));

function gradeOf(input: ModelInput): GradeLine {
  const flow = numberOrNull(input, "flow") ?? 0;
  const bore = numberOf(input, "bore");
  const source = numberOf(input, "source_height");
  const end = source - numberOf(input, "head");
  const opening = numberOrNull(input, "opening");
  const entryHead = ((1 + ENTRY_K) * (flow / boreArea(bore)) ** 2) / (2 * GRAVITY);
  const standing = flow === 0 ? Math.max(0, source - end) : 0;
  return {
    route: input.values["route_points"] as readonly RoutePoint[],
    sourceHeight: source,
    endHeight: end,
    // While nothing runs, the water stands level behind the valve or the hump.
    valveHead: opening === null || flow === 0 ? standing : orificeHead({ opening, flow }),
    entryHead,
    siphonLimit: Math.max(0, numberOf(input, "siphon_limit") - entryHead),
    flow,
    bore,
  };
}

function worst(
  troubles: readonly RouteTrouble[],
  kinds: readonly RouteTrouble["kind"][],
): RouteTrouble | null {
  return troubles
    .filter(({ kind }) => kinds.includes(kind))
    .reduce<RouteTrouble | null>((most, trouble) => (!most || trouble.by > most.by ? trouble : most), null);
}

/** What the flowing water does at the high points. */
export const pressing: Model = {
  name: "pressing",
  takes: ["route_points", "source_height", "head", "flow", "opening", "bore", "siphon_limit"],
  optional: ["route_points", "flow", "opening"],
  outputs: PRESSING,
  run: (input) => {
    if (!input.values["route_points"]) return all(PRESSING, { none: NO_ROUTE });
    const line = gradeOf(input);
    const troubles = routeTroubles(line);
    const siphon = worst(troubles, ["siphon", "siphon_too_high"]);
    const suction = worst(troubles, ["under_pressure"]);
    const pockets = troubles.filter(({ kind }) => kind === "air_pocket");
    return outcomes(
      {
        grade_line: gradeLine(line).map(({ distance, height }) => [distance, height]),
        high_points: highPointsOf(line.route, troubles),
        siphon_by: siphon && (siphon.by < LEVEL_WITH ? 0 : siphon.by),
        suction_by: suction?.by ?? null,
        suction_at: suction?.distance ?? null,
        air_head: pockets.length > 0 ? pockets.reduce((sum, { by }) => sum + by, 0) : null,
        air_at: worst(pockets, ["air_pocket"])?.distance ?? null,
      },
      "nothing of the kind on its route",
    );
  },
};
