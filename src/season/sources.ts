// What waters a bed: a pump with its hose, or cans by hand; how fast, at what cost, and what of the tank it can reach.

import { volumeAt } from "../physics/vessel.ts";
import type { CarryPart, DeliveryPart, SeasonInput, SunOnPump, TankPart } from "./input.ts";
import { newTally, type Tally } from "./tally.ts";
import type { Tanks } from "./tanks.ts";

export type Source = {
  readonly id: string;
  readonly tank: number;
  /** Water in the tank that it cannot reach [m3]. */
  readonly under: number;
  /** A pump: flow [m3/s] and power [W] against water in the tank [m3], rising. */
  readonly volumes: Float64Array;
  readonly flows: Float64Array;
  readonly powers: Float64Array;
  /** Place of its pump and its battery; -1: none, or no limit known. */
  readonly pump: number;
  readonly battery: number;
  /** The sun that drives it; null where it runs on anything else. */
  readonly sun: SunOnPump | null;
  /** Moving and setting up, once a watering [s]; whether someone holds the hose while it runs. */
  readonly setUp: number;
  readonly attended: boolean;
  /** Cans: carried in a round [m3] and its time [s]; a pump has 0. */
  readonly roundVolume: number;
  readonly roundTime: number;
  readonly volume: Tally;
  readonly time: Tally;
  readonly hands: Tally;
  readonly trips: Tally;
  readonly energy: Tally;
};

type Spans = { readonly seasons: number; readonly years: number };

const tallies = ({ seasons, years }: Spans) => ({
  volume: newTally(seasons, years),
  time: newTally(seasons, years),
  hands: newTally(seasons, years),
  trips: newTally(seasons, years),
  energy: newTally(seasons, years),
});

/** Pumps by their word; a delivery without one has its own. */
export function pumpsOf(input: SeasonInput): readonly string[] {
  return [...new Set(input.deliveries.map(({ id, pump }) => pump ?? id))].sort();
}

/** What a source gave: water [m3], its running or carrying time [s], rounds with cans. */
export type Served = { readonly amount: number; readonly time: number; readonly trips: number };

/** One's own time for a watering of so much running or carrying [s]. */
export const handsFor = ({ roundVolume, setUp, attended }: Source, time: number): number =>
  roundVolume > 0 ? time : setUp + (attended ? time : 0);

/**
 * A pump and its hose, ready to run.
 *
 * @returns the source, or null where its tank is not there
 */
export function pumped(
  part: DeliveryPart,
  tanks: Tanks,
  places: { readonly pumps: readonly string[]; readonly batteries: readonly { readonly id: string }[] },
  spans: Spans,
): Source | null {
  const tank = tanks.placeOf.get(part.from);
  if (tank === undefined) return null;
  const { vessel, outlet } = tanks.parts[tank] as TankPart;
  const atDepth = (depth: number) => volumeAt(vessel, Math.min(Math.max(0, depth), vessel.height));
  return {
    id: part.id,
    tank,
    under: atDepth(Math.max(outlet, part.lowestWater)),
    volumes: Float64Array.from(part.depths, atDepth),
    flows: Float64Array.from(part.flows),
    powers: Float64Array.from(part.powers),
    pump: places.pumps.indexOf(part.pump ?? part.id),
    battery: places.batteries.findIndex(({ id }) => id === part.battery),
    sun: part.sun ?? null,
    setUp: part.setUp,
    attended: part.attended ?? true,
    roundVolume: 0,
    roundTime: 0,
    ...tallies(spans),
  };
}

/**
 * Cans, ready to carry.
 *
 * @returns the source, or null where its tank is not there
 */
export function carried(part: CarryPart, tanks: Tanks, spans: Spans): Source | null {
  const tank = tanks.placeOf.get(part.from);
  if (tank === undefined) return null;
  const none = new Float64Array(0);
  return {
    id: part.id,
    tank,
    under: tanks.dead[tank] as number,
    volumes: none,
    flows: none,
    powers: none,
    pump: -1,
    battery: -1,
    sun: null,
    setUp: 0,
    attended: true,
    roundVolume: part.canVolume * part.cansAtOnce,
    roundTime: part.roundTime,
    ...tallies(spans),
  };
}
