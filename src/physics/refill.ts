// How long a float-valve tank takes to fill from another tank, with both levels moving and the valve closing.

import { GRAVITY } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";
import { type GravityLine, gravityFlow, gravityHead, seriesFlow } from "./gravity-line.ts";
import { integral } from "./integral.ts";
import { boreArea } from "./pipe-friction.ts";
import { bracketedRoot } from "./root.ts";
import { levelAt, type Vessel, volumeAt } from "./vessel.ts";

const SOURCE = "water balance of a refill";
/** An opening so many times its hose's bore holds nothing back any more. */
const MOST_TIMES_BORE = 10;

/** One refill: where the water comes from, through what, and to what level. */
export type Refill = {
  readonly line: GravityLine;
  /** Another line that the water runs through first, up to a joint without storage; left out: none. */
  readonly before?: GravityLine;
  readonly source: {
    readonly vessel: Vessel;
    /** Height of its inside floor above the datum [m]. */
    readonly floor: number;
    /** Depth above its floor under which it gives no water to the line [m]. */
    readonly outlet: number;
    /** Level above its floor at the start [m]. */
    readonly level: number;
  };
  readonly target: {
    readonly vessel: Vessel;
    /** Height of its inside floor above the datum [m]. */
    readonly floor: number;
    /** Level above its floor at the start [m]. */
    readonly from: number;
    /** Level above its floor at which the float is shut, or the tank full [m]. */
    readonly shut: number;
  };
  /** Depth below `shut` over which the valve closes in proportion; 0: it snaps shut [m]. */
  readonly band: number;
  /** Height of the line's start above the datum; left out: at the source's outlet [m]. */
  readonly startHeight?: number;
  /** Height of the line's other end above the datum; water over it pushes back [m]. */
  readonly endHeight: number;
  /** Share of the rise at which it counts as full: a closing valve never quite arrives. Left out: 0.98, or 1 without a band [-]. */
  readonly doneShare?: number;
};

/** Why a refill does not end. */
export type RefillStop = "never_starts" | "levels_equal" | "source_dry" | "already_full";

/** How a refill ends. */
export type RefillEnd =
  | {
      readonly state: "fills";
      /** Until it counts as full [s]. */
      readonly time: number;
      /** Moved until then [m3]. */
      readonly volume: number;
    }
  | {
      readonly state: "stops";
      readonly cause: RefillStop;
      /** The cause in words. */
      readonly reason: string;
      /** Moved until then [m3]. */
      readonly volume: number;
      /** Level above the target's floor at which it stops [m]. */
      readonly level: number;
    };

const REASONS: Readonly<Record<RefillStop, string>> = {
  never_starts: "the water never starts to run",
  levels_equal: "the levels meet before it is full",
  source_dry: "the source gives out before it is full",
  already_full: "it is full already",
};

/** Share of the rise that counts as full with a closing valve: common practice, no source. */
export const DONE_SHARE = 0.98;

/**
 * Time a refill takes, or why it never ends.
 * The integral of dV / Q over the volume moved, with both levels following the volume, and the valve's opening
 * falling in proportion to the depth left over its band.
 *
 * @param refill tanks, line and levels, units at the type's fields
 * @returns time [s] and volume [m3]; or the reason, with the volume moved and the level reached [m]
 * @throws DomainError for levels outside the vessels
 * @source continuity with gravityFlow; the valve's linear band: common practice, no source
 */
export function refillTime(refill: Refill): RefillEnd {
  const state = stateOf(refill);
  const need = state.volumeToDone;
  const stop = (cause: RefillStop, moved: number): RefillEnd => {
    return { state: "stops", cause, reason: REASONS[cause], volume: moved, level: state.targetLevel(moved) };
  };
  if (need <= 0) return stop("already_full", 0);
  if (state.headAt(0) <= 0 || state.available <= 0 || refill.line.opening === 0)
    return stop("never_starts", 0);
  const reach = Math.min(need, state.available);
  if (state.headAt(reach) <= 0) {
    return stop("levels_equal", bracketedRoot(state.headAt, 0, reach));
  }
  if (reach < need) return stop("source_dry", reach);
  const time = state.breaks.reduce((sum, from, index) => {
    const to = state.breaks[index + 1];
    return to === undefined ? sum : sum + integral((moved) => 1 / state.flowAt(moved), from, to);
  }, 0);
  return { state: "fills", time, volume: need };
}

/** What the volume moved so far makes of levels, head and flow. */
type RefillState = {
  readonly volumeToDone: number;
  /** Volume above the source's outlet and the line's start [m3]. */
  readonly available: number;
  /** Volumes between which the flow is smooth, rising from 0 to done [m3]. */
  readonly breaks: readonly number[];
  readonly targetLevel: (moved: number) => number;
  readonly headAt: (moved: number) => number;
  readonly flowAt: (moved: number) => number;
};

function stateOf({ line, source, target, band, endHeight, ...rest }: Refill): RefillState {
  const start = rest.startHeight ?? source.floor + source.outlet;
  requireNotNegative("valve band", band, SOURCE);
  const doneShare = rest.doneShare ?? (band > 0 ? DONE_SHARE : 1);
  requireWithin("share of the rise", doneShare, [0, 1], SOURCE);
  if (band > 0 && doneShare === 1)
    throw new DomainError("share of the rise", 1, "below 1 with a closing valve", SOURCE);
  const inSource = volumeAt(source.vessel, source.level);
  const inTarget = volumeAt(target.vessel, target.from);
  const lowest = Math.min(source.level, Math.max(source.outlet, start - source.floor, 0));
  const done = target.from + doneShare * (target.shut - target.from);
  const moved = (level: number) => volumeAt(target.vessel, level) - inTarget;
  const volumeToDone = target.shut > target.from ? moved(done) : 0;
  const targetLevel = (volume: number) => levelAt(target.vessel, inTarget + volume);
  const headAt = (volume: number) =>
    source.floor +
    levelAt(source.vessel, inSource - volume) -
    Math.max(endHeight, target.floor + targetLevel(volume));
  const openAt = (volume: number) =>
    band > 0 ? Math.min(1, Math.max(0, (target.shut - targetLevel(volume)) / band)) : 1;
  const kinks = [target.shut - band, endHeight - target.floor]
    .filter((level) => level > target.from && level < done)
    .map(moved);
  return {
    volumeToDone,
    available: inSource - volumeAt(source.vessel, lowest),
    breaks: [0, ...kinks.sort((a, b) => a - b), volumeToDone],
    targetLevel,
    headAt,
    flowAt: (volume) => flowThrough(rest.before, throttledLine(line, openAt(volume)), headAt(volume)),
  };
}

function flowThrough(before: GravityLine | undefined, line: GravityLine, head: number): number {
  return before ? seriesFlow(before, line, head) : gravityFlow(line, head);
}

function throttledLine(line: GravityLine, share: number): GravityLine {
  return share === 1 || line.opening === null ? line : { ...line, opening: line.opening * share };
}

/** What a measurement taught, or why it cannot be. */
export type Taught =
  | {
      /** Effective opening, Cd times area [m2]. */
      readonly opening: number;
    }
  | { readonly reason: string };

/**
 * The valve's opening that a measured flow tells: what head the hose leaves, Q / √(2 g h left).
 *
 * @param line the line; its own opening is not looked at
 * @param head that drove the flow [m]
 * @param flow measured [m3/s]
 * @returns effective opening [m2]; or the reason, when the hose alone could not pass the flow
 * @throws DomainError for a flow that is not above 0
 * @source gravityHead, solved for the opening
 */
export function openingFromFlow(line: GravityLine, head: number, flow: number): Taught {
  requirePositive("flow", flow, SOURCE);
  const left = head - gravityHead({ ...line, opening: null }, flow);
  if (!(left > 0)) return { reason: "the hose alone could not pass so much at this drop" };
  return { opening: flow / Math.sqrt(2 * GRAVITY * left) };
}

/**
 * The valve's opening with which a refill takes a measured time.
 *
 * @param refill the refill; its line's own opening is not looked at
 * @param time measured until full [s]
 * @returns effective opening [m2]; or the reason, when the hose alone could not be so fast or it would never end
 * @throws DomainError for a time that is not above 0
 * @source refillTime, solved for the opening
 */
export function openingFromRefill(refill: Refill, time: number): Taught {
  requirePositive("refill time", time, SOURCE);
  const endWith = (opening: number) => refillTime({ ...refill, line: { ...refill.line, opening } });
  const widest = MOST_TIMES_BORE * boreArea(refill.line.bore);
  const fastest = endWith(widest);
  if (fastest.state === "stops") return { reason: fastest.reason };
  if (time <= fastest.time) return { reason: "the hose alone could not fill it so fast" };
  const residual = (logarithm: number) => {
    const end = endWith(Math.exp(logarithm));
    return end.state === "fills" ? Math.log(end.time / time) : Infinity;
  };
  // A valve that governs slows in proportion, one that the hose governs slows less, so that this is narrow enough.
  let narrowest = (widest * fastest.time) / time;
  while (residual(Math.log(narrowest)) < 0) narrowest /= 2;
  return { opening: Math.exp(bracketedRoot(residual, Math.log(narrowest), Math.log(widest), 1e-12)) };
}
