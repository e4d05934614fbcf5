// Plans and records for the season's tests: small, in metres and seconds, with nothing in them that a test did not ask for.

import { readFileSync } from "node:fs";
import { type Edge, type Network, networkOf, type Role } from "../../src/network/network.ts";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import type { SeasonAnswer } from "../../src/season/answer.ts";
import type {
  BatteryPart,
  BedPart,
  CarryPart,
  CropPart,
  DeliveryPart,
  DrawPart,
  LinePart,
  RoofPart,
  SeasonInput,
  SunOnPump,
  TankPart,
} from "../../src/season/input.ts";
import { runSeason } from "../../src/season/run.ts";
import { dayNumber } from "../../src/units/calendar.ts";
import { DAY } from "../../src/units/constants.ts";

export const MM = 0.001;
export const LITRE = 0.001;

export function recordOf(
  rain: ArrayLike<number>,
  firstDay: number,
  more: Partial<DailyRecord> = {},
): DailyRecord {
  return {
    key: "test",
    title: "test",
    source: "made for a test",
    madeUp: true,
    firstDay,
    rain: Float64Array.from(rain),
    highest: null,
    lowest: null,
    wind: null,
    vapour: null,
    sun: null,
    ...more,
  };
}

/** The Seattle record: npm vega-datasets 3.2.1, seattle-weather.csv, 2012-01-01 to 2015-12-31. */
export function seattle(): DailyRecord {
  const file = new URL("../fixtures/seattle-weather.csv", import.meta.url);
  const rows = readFileSync(file, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((row) => row.split(","));
  const column = (place: number) => rows.map((row) => Number(row[place]));
  return recordOf(
    column(1).map((depth) => depth * MM),
    dayNumber(2012, 1, 1),
    {
      highest: Float64Array.from(column(2), (degrees) => degrees + 273.15),
      lowest: Float64Array.from(column(3), (degrees) => degrees + 273.15),
    },
  );
}

/** Reference evapotranspiration of the same depth on every day [m a day]. */
export function steadyEto(depth: number): SeasonInput["eto"] {
  return {
    method: "monthly",
    latitude: 0.8,
    elevation: 100,
    months: Array(12).fill(depth / DAY),
    factor: 1,
    normals: null,
  };
}

type Parts = Omit<SeasonInput, "network">;

/** How parts made for a test hang together, by their own fields. */
function networkOfParts(parts: Parts): Network {
  const runs = { stopped: null };
  const nodes = (list: readonly { readonly id: string }[], role: Role) =>
    list.map(({ id }) => ({ id, role }));
  return networkOf(
    [
      ...nodes(parts.roofs, "roof"),
      ...nodes(parts.tanks, "tank"),
      ...nodes(parts.tees, "joint"),
      ...nodes(parts.draws, "draw"),
      ...nodes([...parts.deliveries, ...parts.carries], "waterer"),
      ...nodes(parts.batteries, "battery"),
      ...nodes(parts.beds, "bed"),
    ],
    [
      ...parts.roofs.flatMap(({ id, drainsTo }): Edge[] =>
        drainsTo === null ? [] : [{ kind: "catches", by: id, from: id, to: drainsTo, ...runs }],
      ),
      ...parts.tanks.flatMap(({ id, overflowsTo }): Edge[] =>
        overflowsTo === null ? [] : [{ kind: "spills", by: id, from: id, to: overflowsTo, ...runs }],
      ),
      ...parts.lines.map(
        ({ id, from, to, blocked }): Edge => ({ kind: "feeds", by: id, from, to, stopped: blocked }),
      ),
      ...[...parts.draws, ...parts.deliveries, ...parts.carries].map(
        ({ id, from }): Edge => ({ kind: "draws", by: id, from, to: id, ...runs }),
      ),
      ...parts.deliveries.flatMap(({ id, battery: from }): Edge[] =>
        from === null ? [] : [{ kind: "powers", by: id, from, to: id, ...runs }],
      ),
      ...parts.beds.flatMap(({ id, wateredBy }) =>
        wateredBy.map((from): Edge => ({ kind: "waters", by: id, from, to: id, ...runs })),
      ),
    ],
  );
}

export function inputOf(more: Partial<SeasonInput> = {}): SeasonInput {
  const parts: Parts = {
    start: "01-01",
    end: "12-31",
    storageRule: "spill_first",
    minutesPerDay: null,
    waterAt: 7 * 3600,
    holdDays: 0,
    rainScale: 1,
    waterDensity: 1000,
    eto: steadyEto(4 * MM),
    roofs: [],
    tanks: [],
    lines: [],
    tees: [],
    draws: [],
    deliveries: [],
    carries: [],
    batteries: [],
    beds: [],
    leftOut: [],
    ...more,
  };
  return { ...parts, network: more.network ?? networkOfParts(parts) };
}

export const roof = (more: Partial<RoofPart> = {}): RoofPart => ({
  id: "roof",
  footprint: 100,
  runoffCoefficient: 0.9,
  wettingLoss: 0,
  firstFlush: 0,
  drainsTo: "tank",
  catchFrom: null,
  catchUntil: null,
  ...more,
});

export const tank = (volume: number, more: Partial<TankPart> = {}): TankPart => ({
  id: "tank",
  vessel: { form: "upright", height: 1, volume },
  floor: 0,
  outlet: 0,
  openArea: 0,
  overflowsTo: null,
  startShare: 0,
  leak: 0,
  ...more,
});

export const draw = (volume: number, more: Partial<DrawPart> = {}): DrawPart => ({
  id: "draw",
  from: "tank",
  volume,
  every: DAY,
  ...more,
});

export const carry = (more: Partial<CarryPart> = {}): CarryPart => ({
  id: "cans",
  from: "tank",
  canVolume: 8 * LITRE,
  cansAtOnce: 2,
  roundTime: 180,
  distance: 20,
  canMass: 1,
  ...more,
});

export const delivery = (more: Partial<DeliveryPart> = {}): DeliveryPart => ({
  id: "pump",
  from: "tank",
  pump: null,
  depths: [0],
  flows: [0.2 * LITRE],
  powers: [40],
  lowestWater: 0,
  battery: null,
  setUp: 0,
  ...more,
});

/** Sun that drives a pump the same in every month: its full running, and the bright hours, by the end of each hour [s]. */
export function sunny(hours: readonly number[], bright: readonly number[]): SunOnPump {
  const months = (each: readonly number[]) => ({ dry: Array(12).fill(each), wet: Array(12).fill(each) });
  return { ...months(hours), bright: months(bright) };
}

export const battery = (more: Partial<BatteryPart> = {}): BatteryPart => ({
  id: "battery",
  usable: 500_000,
  efficiency: 0.8,
  startShare: 1,
  charged: "mains",
  carriedEvery: 7,
  dryCharge: Array(12).fill(0),
  wetCharge: Array(12).fill(0),
  selfDischarge: 0,
  leastChargingTemperature: null,
  ...more,
});

export const line = (more: Partial<LinePart> = {}): LinePart => ({
  id: "line",
  from: "tank",
  to: "tub",
  length: 15,
  bore: 0.0159,
  roughness: 1.5e-6,
  fittingsK: 3.3,
  opening: 1.2e-5,
  valveBand: 0.03,
  shutLevel: 0.4,
  startHeight: 1,
  endHeight: 0.4,
  checkValve: false,
  blocked: null,
  viscosity: 1.14e-6,
  ...more,
});

export const crop = (more: Partial<CropPart> = {}): CropPart => ({
  crop: "test crop",
  planted: "05-01",
  share: 1,
  kcInitial: 0.6,
  kcMiddle: 1.15,
  kcEnd: 0.8,
  kcbInitial: 0.15,
  kcbMiddle: 1.1,
  kcbEnd: 0.7,
  stages: [30, 40, 45, 30],
  depletion: 0.4,
  rootStart: 0.15,
  rootEnd: 0.3,
  height: 0.6,
  yieldResponse: 1.05,
  ...more,
});

export const bed = (more: Partial<BedPart> = {}): BedPart => ({
  id: "bed",
  area: 10,
  wettedShare: 1,
  canopyShare: 1,
  crops: [crop()],
  availableWater: 0.15,
  evaporable: { total: 0.019, readily: 0.009 },
  bareLeft: 1,
  rootLimit: 0.3,
  covered: false,
  coverFactor: 1,
  mulchFactor: 1,
  efficiency: 0.8,
  wateredBy: ["cans"],
  priority: 1,
  rule: { kind: "soil" },
  decidesOn: "evening",
  mingled: false,
  youngDays: 0,
  groundWetting: null,
  airCorrects: false,
  letGo: null,
  worth: 3,
  ...more,
});

/** Runs a plan that must run. */
export function ran(plan: SeasonInput, record: DailyRecord): SeasonAnswer {
  const answer = runSeason(plan, record);
  if ("failed" in answer) throw new Error(answer.failed);
  return answer;
}
