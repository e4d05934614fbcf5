// Worked examples of roofs, downspouts, storage methods and tanks.

import { readFileSync } from "node:fs";
import { downspoutCapacity } from "../../../src/physics/downspout.ts";
import { dayRunoff } from "../../../src/physics/roof.ts";
import { drainedArea, stormFlow } from "../../oracles/downspout.ts";

import { dailyRunoff } from "../../oracles/roof.ts";
import { sequentPeak } from "../../../src/physics/storage-yield.ts";
import { tankYield } from "../../oracles/storage-yield.ts";

import { levelAt, surfaceAt, type Vessel, volumeAt } from "../../../src/physics/vessel.ts";
import { DAY, GRAVITY } from "../../../src/units/constants.ts";
import { toSi } from "../../../src/units/unit.ts";
import type { Adaptor } from "../worked-case.ts";

/** Rain of each day of the Seattle record, and the year of each. */
function seattle(): { readonly rain: readonly number[]; readonly years: readonly number[] } {
  const file = new URL("../../fixtures/seattle-weather.csv", import.meta.url);
  const rows = readFileSync(file, "utf8").trim().split("\n").slice(1);
  return {
    rain: rows.map((row) => toSi(Number(row.split(",")[1]), "mm")),
    years: rows.map((row) => Number(row.slice(0, 4))),
  };
}

/** A roof's water of a depth of rain, without further losses. */
const caught = (footprint: number, runoffCoefficient: number, rain: number): number =>
  dayRunoff({ footprint, runoffCoefficient, wettingLoss: 0, firstFlush: 0 }, rain, 0).volume;

function named(prefix: string, values: ArrayLike<number>): Record<string, number> {
  return Object.fromEntries(Array.from(values, (value, index) => [`${prefix}_${index + 1}`, value]));
}

/** Flows held over months of so many days to volumes. */
const monthly = (flows: readonly number[] | number, days: readonly number[]): number[] =>
  days.map((count, month) => (typeof flows === "number" ? flows : (flows[month] ?? 0)) * count * DAY);

function seattleTank(given: Parameters<Adaptor>[0]): Record<string, number> {
  const { footprint, coefficient, wetting_loss, capacity, demand, start, rule } = given;
  const { rain, years } = seattle();
  const inflow = dailyRunoff({ footprint, runoffCoefficient: coefficient, wettingLoss: wetting_loss ?? 0, firstFlush: 0 }, rain);
  const run = tankYield({ inflow, demand, capacity, start, rule });
  const all = rain.reduce((sum, depth) => sum + depth, 0);
  const byYear = Object.fromEntries(
    [...new Set(years)].map((year) => [
      `yield_${year}`,
      run.given.reduce((sum, given, day) => sum + (years[day] === year ? given : 0), 0),
    ]),
  );
  return {
    inflow: run.inflow,
    diverted: all * footprint * coefficient - run.inflow,
    yield: run.yield,
    spill: run.spill,
    end: run.end,
    reliability: run.yield / (demand * rain.length),
    days_met: run.stepsMet,
    ...byYear,
  };
}

function monthlyReservoir(given: Parameters<Adaptor>[0]): Record<string, number> {
  const inflow = monthly(given["flows"], given["days"]);
  const demand = monthly(given["demand"], given["days"]);
  const run = tankYield({ inflow, demand, capacity: given["capacity"], start: given["start"], rule: given["rule"] });
  const wanted = demand.reduce((sum, want) => sum + want, 0);
  return {
    ...named("in", inflow),
    ...named("demand", demand),
    ...named("end", run.stored),
    ...named("given", run.given),
    wanted,
    yield: run.yield,
    deficit: wanted - run.yield,
    spill: run.spill,
  };
}

/** A basin of which a share is the reservoir itself: runoff on the rest, rain less evaporation on the share. */
function basin({ area, share, runoff, rain, evaporation, demand, days }: Parameters<Adaptor>[0]): Record<string, number> {
  const inflow = runoff.map(
    (depth: number, month: number) => area * ((1 - share) * depth + share * (rain[month] - evaporation[month])),
  );
  const { capacity, missing } = sequentPeak(inflow, monthly(demand, days));
  return { capacity, ...named("missing", missing) };
}

const vesselOf = (form: Vessel["form"], given: Parameters<Adaptor>[0]): Vessel => {
  const { diameter, height, length, width } = given;
  if (form === "lying") return { form, height: diameter, volume: (Math.PI / 4) * diameter ** 2 * length };
  const base = width === undefined ? (Math.PI / 4) * diameter ** 2 : length * width;
  return { form, height, volume: base * height };
};

export const functions: Record<string, Adaptor> = {
  catchVolume: ({ footprint, coefficient = 1, rain }) => ({ volume: caught(footprint, coefficient, rain) }),
  depthOnRoof: ({ volume, footprint }) => ({ depth: volume / caught(footprint, 1, 1) }),
  stormFlow: ({ footprint, rain_rate }) => ({ flow: stormFlow(footprint, rain_rate) }),
  downspoutCapacity: ({ bore }) => ({ flow: downspoutCapacity(bore) }),
  drainedArea: ({ bore, rain_rate }) => ({ area: drainedArea(bore, rain_rate) }),
  tankYield: ({ inflow, demand, capacity, start, rule }) => {
    const run = tankYield({ inflow, demand, capacity, start, rule });
    return { ...named("end", run.stored), spill: run.spill, yield: run.yield, steps_met: run.stepsMet };
  },
  seattleTank,
  monthlyReservoir,
  sequentPeak: ({ inflow, demand, cycles }) => {
    const { capacity, missing } = sequentPeak(inflow, demand, cycles);
    return { capacity, ...named("missing", missing) };
  },
  roofTankRippl: ({ footprint, coefficient, rain, demand }) => {
    const inflow = rain.map((depth: number) => caught(footprint, coefficient, depth));
    const { capacity, missing } = sequentPeak(inflow, demand, 1);
    return { capacity, ...named("in", inflow), ...named("missing", missing), yearly: inflow.reduce((a: number, b: number) => a + b, 0) };
  },
  basin,
  lyingCylinder: ({ level, ...given }) => {
    const vessel = vesselOf("lying", given);
    return { full: vessel.volume, volume: volumeAt(vessel, level), share: volumeAt(vessel, level) / vessel.volume };
  },
  uprightTank: (given) => {
    const vessel = vesselOf("upright", given);
    return { full: vessel.volume, per_depth: surfaceAt(vessel, 0), level: levelAt(vessel, given["volume"] ?? vessel.volume) };
  },
};
