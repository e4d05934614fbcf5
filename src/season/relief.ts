// A season's input with one bound set free, all else as it is: the run of it says how many short days that bound costs.

import { BOUNDS, type Bound } from "../network/bounds.ts";
import { isRoofed } from "../network/feeds.ts";
import { edgesFrom, edgesTo, runs } from "../network/network.ts";
import type { SeasonTotals } from "./answer.ts";
import type { CarryPart, LinePart, SeasonInput, TankPart } from "./input.ts";

/** One run: which bounds are free, and the share of the rain that falls. */
export type Freeing = { readonly bounds: readonly Bound[]; readonly rain: number };

/** Short days of all whole seasons together, and how many seasons they are. */
export type ShortDays = {
  readonly days: number;
  readonly seasons: number;
  /** Of each season, in order, and the place of the worst among them; -1: none. */
  readonly bySeason: readonly number[];
  readonly worst: number;
};

/** Short days of a finished run; null where it has no bed. */
export function shortDaysOf({ daysShort, seasons, bySeason, worstSeason }: SeasonTotals): ShortDays | null {
  if (daysShort === null) return null;
  const each = bySeason.map((season) => season.daysShort);
  return {
    days: each.reduce((sum, days) => sum + days, 0),
    seasons,
    bySeason: each,
    worst: bySeason.findIndex(({ year }) => year === worstSeason?.year),
  };
}

/** Bounds set free together, and the short days that this takes away: of all seasons, and of the worst. */
export type Relief = {
  readonly bounds: readonly Bound[];
  readonly saved: number;
  readonly savedInWorst: number;
};

export type GivesOut =
  /** `first`: one that by itself takes away most short days; several of them only where they take away equally many. */
  /** `pair`: no single one helps enough; two together do. */
  | {
      readonly state: "first" | "pair";
      readonly rain: number;
      readonly short: ShortDays;
      readonly first: readonly Relief[];
    }
  /** Neither single ones nor pairs help enough. */
  | { readonly state: "several"; readonly rain: number; readonly short: ShortDays }
  /** No short day, not even with half of the rain. */
  | { readonly state: "never" };

/** Storage, roofs and tubs are freed by making them so many times as big. */
const TIMES = 10;
/** A tank that no roof fills is freed by making it, full at the start, so many times as big. */
const WELL = 1e4;
/** A pump that needs no time runs so many times as fast, for the same energy a litre. */
const FASTER = 1e4;
/** A refill at once: a short wide line with an opening as wide [m], [m2]. */
const SHORT_LINE = 0.5;
const WIDE_BORE = 0.2;
const WIDE_OPENING = 0.02;
/** How far under a source's outlet a line that is made to run ends [m]. */
const FALL = 0.3;

/** Tanks that lines should fill and waterers draw from; the others are storage. */
function tubsOf({ network }: SeasonInput): ReadonlySet<string> {
  const tubs = network.nodes.filter(
    ({ id, role }) =>
      role === "tank" &&
      edgesTo(network, "feeds", id).length > 0 &&
      edgesFrom(network, "draws", id).length > 0,
  );
  return new Set(tubs.map(({ id }) => id));
}

/** The same litres at the start, heights, open water and leak in a tank so many times as big. */
function bigger(part: TankPart): TankPart {
  return {
    ...part,
    vessel: { ...part.vessel, volume: part.vessel.volume * TIMES },
    startShare: part.startShare / TIMES,
  };
}

/** So much in it that no season's beds drink it: as if there were a well instead. */
const neverEmpty = (part: TankPart): TankPart => ({
  ...part,
  vessel: { ...part.vessel, volume: part.vessel.volume * WELL },
  startShare: 1,
});

function withTanks(input: SeasonInput, which: (id: string) => boolean): SeasonInput {
  return { ...input, tanks: input.tanks.map((part) => (which(part.id) ? bigger(part) : part)) };
}

function refilledAtOnce(input: SeasonInput): SeasonInput {
  const tubs = tubsOf(input);
  const fast = (line: LinePart): LinePart => ({
    ...line,
    length: Math.min(line.length, SHORT_LINE),
    bore: Math.max(line.bore, WIDE_BORE),
    opening: line.opening === null ? null : Math.max(line.opening, WIDE_OPENING),
  });
  return { ...input, lines: input.lines.map((line) => (tubs.has(line.to ?? "") ? fast(line) : line)) };
}

/** Lines that can never carry anything, made to run: unblocked, with some length and opening, their target under their source. */
function linesRunning(input: SeasonInput): SeasonInput {
  const edges = input.network.edges.filter((edge) => edge.kind === "feeds" && !runs(edge));
  const stopped = new Set(edges.map(({ by }) => by));
  const heightOf = (id: string): number => {
    const tank = input.tanks.find((part) => part.id === id);
    return tank ? tank.floor + tank.outlet : (input.tees.find((part) => part.id === id)?.height ?? 0);
  };
  const lowered = new Map<string, number>();
  const lines = input.lines.map((line): LinePart => {
    if (!stopped.has(line.id)) return line;
    const start = Math.min(line.startHeight, heightOf(line.from));
    const end = Math.min(line.endHeight, start - FALL);
    if (line.to !== null) lowered.set(line.to, Math.min(lowered.get(line.to) ?? Infinity, start - FALL));
    return {
      ...line,
      blocked: null,
      length: Math.max(line.length, SHORT_LINE),
      opening: line.opening === 0 ? WIDE_OPENING : line.opening,
      startHeight: start,
      endHeight: end,
      lift: 0,
    };
  });
  const under = (part: TankPart): TankPart => {
    const top = lowered.get(part.id);
    return top === undefined ? part : { ...part, floor: Math.min(part.floor, top - part.vessel.height) };
  };
  const network = {
    ...input.network,
    edges: input.network.edges.map((edge) => (stopped.has(edge.by) ? { ...edge, stopped: null } : edge)),
  };
  return { ...input, lines, tanks: input.tanks.map(under), network };
}

const WELL_TANK: TankPart = {
  id: "a well",
  vessel: { form: "upright", height: 1, volume: 1e6 },
  floor: 0,
  outlet: 0,
  openArea: 0,
  overflowsTo: null,
  startShare: 1,
  leak: 0,
};
const WELL_CANS: CarryPart = {
  id: "cans at the well",
  from: WELL_TANK.id,
  canVolume: 1,
  cansAtOnce: 1,
  roundTime: 0,
  distance: 0,
  canMass: 0,
};

/** Beds that nothing waters get all they ask for, out of a well of their own and in no time. */
function wateredByWell(input: SeasonInput): SeasonInput {
  const dry = input.beds.filter(({ wateredBy }) => wateredBy.length === 0);
  if (dry.length === 0) return input;
  const { nodes, edges } = input.network;
  const edge = { by: WELL_CANS.id, stopped: null };
  return {
    ...input,
    tanks: [...input.tanks, WELL_TANK],
    carries: [...input.carries, WELL_CANS],
    beds: input.beds.map((bed) => (dry.includes(bed) ? { ...bed, wateredBy: [WELL_CANS.id] } : bed)),
    network: {
      nodes: [...nodes, { id: WELL_TANK.id, role: "tank" }, { id: WELL_CANS.id, role: "waterer" }],
      edges: [
        ...edges,
        { ...edge, kind: "draws", from: WELL_TANK.id, to: WELL_CANS.id },
        ...dry.map(({ id }) => ({ ...edge, by: id, kind: "waters" as const, from: WELL_CANS.id, to: id })),
      ],
    },
  };
}

const FREE: Readonly<Record<Bound, (input: SeasonInput) => SeasonInput>> = {
  storage: (input) => {
    const tubs = tubsOf(input);
    return withTanks(input, (id) => !tubs.has(id));
  },
  loss: (input) => ({
    ...input,
    tanks: input.tanks.map((part) => ({ ...part, leak: 0, dries: false })),
  }),
  rain: (input) => ({
    ...input,
    roofs: input.roofs.map((roof) => ({ ...roof, footprint: roof.footprint * TIMES })),
  }),
  unroofed: (input) => ({
    ...input,
    tanks: input.tanks.map((part) => (isRoofed(input.network, part.id) ? part : neverEmpty(part))),
  }),
  tankful: (input) => {
    const tubs = tubsOf(input);
    return withTanks(input, (id) => tubs.has(id));
  },
  refill: refilledAtOnce,
  line: linesRunning,
  pump_time: (input) => ({
    ...input,
    deliveries: input.deliveries.map((part) =>
      part.sun
        ? part
        : {
            ...part,
            flows: part.flows.map((flow) => flow * FASTER),
            powers: part.powers.map((power) => power * FASTER),
            setUp: 0,
          },
    ),
  }),
  energy: (input) => ({
    ...input,
    deliveries: input.deliveries.map((part) => ({ ...part, battery: null, sun: null })),
  }),
  // Endless power does away with the night too; what another hour does is tried by turning the hour itself.
  daylight: (input) => input,
  hands: (input) => ({ ...input, minutesPerDay: null }),
  held_back: (input) => ({ ...input, holdDays: 0 }),
  rule: (input) => ({
    ...input,
    beds: input.beds.map((bed) => ({ ...bed, rule: { kind: "soil" as const } })),
  }),
  given_up: (input) => ({ ...input, beds: input.beds.map((bed) => ({ ...bed, letGo: null })) }),
  unwatered: wateredByWell,
};

/** The input with some bounds set free, one after the other. */
export function freed(input: SeasonInput, bounds: readonly Bound[]): SeasonInput {
  return bounds.reduce((free, bound) => FREE[bound](free), input);
}

/** The bounds that are there to be set free: freeing any other changes nothing. */
export function boundsAtWork(input: SeasonInput): readonly Bound[] {
  const text = JSON.stringify(input);
  return BOUNDS.filter((bound) => JSON.stringify(freed(input, [bound])) !== text);
}
