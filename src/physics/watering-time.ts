// How long a pump takes over a volume while the tank it draws on falls, and so its lift grows.

import { DomainError, requireNotNegative } from "./domain-error.ts";
import { integral } from "./integral.ts";
import type { PumpRun } from "./pump-run.ts";
import { levelAt, type Vessel, volumeAt } from "./vessel.ts";

const SOURCE = "continuity of a tank and its pump";
/** Disagreement of the integral that is accepted of points that are solved; for tabulated ones 1e-4 is enough [-]. */
const RELATIVE = 1e-9;

/**
 * Lift to spare at which a pump is taken to have stopped [m]. Its last water trickles, slower and slower without an end.
 * Definition.
 */
const LEAST_TO_SPARE = 0.001;

/** A tank that a pump draws on. */
export type PumpedTank = {
  readonly vessel: Vessel;
  /** Height of the tank's floor over the datum [m]. */
  readonly floor: number;
  /** Depth of the water at the start [m]. */
  readonly level: number;
  /** Depth below which the pump draws air: what lies under it is dead water [m]. */
  readonly lowest: number;
  /** Height over the datum at which the water leaves the hose [m]. */
  readonly outletHeight: number;
  /** Highest lift against which the pump moves water [m]. */
  readonly greatestLift: number;
};

/** What came of a watering. */
export type Watering = {
  /** `done`: all of it; `dry`: down to the pump's lowest water; `too_low`: the lift grew beyond the pump. */
  readonly end: "done" | "dry" | "too_low";
  /** Volume delivered [m3]. */
  readonly volume: number;
  /** [s] */
  readonly time: number;
  /** Charge drawn from the source [C]. */
  readonly charge: number;
  /** Depth of the water at the end [m]. */
  readonly level: number;
};

/**
 * Time, charge and end of pumping a volume out of a tank: the integrals of dV / Q and I dV / Q.
 *
 * @param tank vessel, levels and heights, units at the type's fields
 * @param runAt the pump's point under a lift [m]
 * @param volume wanted; all that can be drawn when left out [m3]
 * @param relative disagreement that is accepted of time and charge, 1e-4 where runAt is a table [-]
 * @returns volume, time, charge and level, units at the type's fields
 * @throws DomainError for a negative volume or a level outside the tank
 * @validity no water runs in meanwhile; the source's voltage stays as it is; with a millimetre of lift to spare the pump
 * is taken to have stopped
 * @source continuity, with pumpRun at each level
 */
export function watering(
  tank: PumpedTank,
  runAt: (lift: number) => PumpRun,
  volume: number | null = null,
  relative: number = RELATIVE,
): Watering {
  if (volume !== null) requireNotNegative("volume of a watering", volume, SOURCE);
  const start = volumeAt(tank.vessel, tank.level);
  // The level at which the lift has become too much for the pump.
  const highest = tank.outletHeight - tank.floor - tank.greatestLift + LEAST_TO_SPARE;
  const stop = Math.max(tank.lowest, highest);
  if (!(stop <= tank.vessel.height)) return ended(tank, 0, highest > tank.lowest ? "too_low" : "dry");
  const drawable = Math.max(0, start - volumeAt(tank.vessel, Math.max(0, stop)));
  if (volume !== null && volume <= drawable)
    return pumped(tank, runAt, { start, volume, highest, relative }, "done");
  return pumped(
    tank,
    runAt,
    { start, volume: drawable, highest, relative },
    highest > tank.lowest ? "too_low" : "dry",
  );
}

/** Volumes at the start and pumped [m3], the lowest level for the lift [m], and the accepted disagreement [-]. */
type Stretch = {
  readonly start: number;
  readonly volume: number;
  readonly highest: number;
  readonly relative: number;
};

function pumped(
  tank: PumpedTank,
  runAt: (lift: number) => PumpRun,
  { start, volume, highest, relative }: Stretch,
  end: Watering["end"],
): Watering {
  if (volume === 0) return ended(tank, 0, end);
  const at = (stored: number) => {
    const run = runAt(tank.outletHeight - tank.floor - levelAt(tank.vessel, stored));
    if (!(run.flow > 0))
      throw new DomainError("flow of the pump", run.flow, "above 0 while it lifts", SOURCE);
    return run;
  };
  // Near the level at which flow dies away its time grows without bound: over the logarithm of what is left it is smooth.
  const base = highest > LEAST_TO_SPARE ? volumeAt(tank.vessel, highest - LEAST_TO_SPARE) : null;
  const over = (of: (run: PumpRun) => number) =>
    base === null
      ? integral((stored) => of(at(stored)), start - volume, start, relative)
      : integral(
          (logarithm) => Math.exp(logarithm) * of(at(base + Math.exp(logarithm))),
          Math.log(start - volume - base),
          Math.log(start - base),
          relative,
        );
  return {
    ...ended(tank, volume, end),
    time: over((run) => 1 / run.flow),
    charge: over((run) => run.current / run.flow),
  };
}

function ended(tank: PumpedTank, volume: number, end: Watering["end"]): Watering {
  const left = Math.max(0, volumeAt(tank.vessel, tank.level) - volume);
  return { end, volume, time: 0, charge: 0, level: levelAt(tank.vessel, left) };
}
