// Worked examples of pumps, wire, fuses, batteries, panels and the sun.

import ampacities from "../../../shared/ampacities.json";
import fuses from "../../../shared/fuses.json";
import gauges from "../../../shared/wire-gauges.json";
import { coldMultiplier, dischargedCharge, dischargeTime, healthFromTest } from "../../../src/physics/battery.ts";
import { peukertExponent } from "../../oracles/battery.ts";
import { cellTemperature } from "../../../src/physics/cell-temperature.ts";
import { type AmpacityRow, ampacity, circuitResistance, copperTemperatureRatio, thinnestForDrop } from "../../../src/physics/copper-wire.ts";
import { areaForDrop, copperResistance, gaugeArea, gaugeDiameter } from "../../oracles/copper-wire.ts";
import { faultCurrent, fuseChoice, fuseDistanceLimit } from "../../../src/physics/fuse.ts";
import type { GravityLine } from "../../../src/physics/gravity-line.ts";
import { chargingPower } from "../../../src/physics/panel-charging.ts";
import { panelCurve } from "../../../src/physics/panel-curve.ts";
import { fillFactor, ratedPanelPower } from "../../oracles/panel-curve.ts";
import { boreArea } from "../../../src/physics/pipe-friction.ts";
import { curveFromPoints, curveFromRatings, type Pump, pumpHead } from "../../../src/physics/pump-curve.ts";
import { dutyAtSpeed } from "../../oracles/pump-curve.ts";
import { pumpRun } from "../../../src/physics/pump-run.ts";
import { singleDiodePoints } from "../../oracles/single-diode.ts";
import { betweenAboveAir, dailyAboveAir, diffuseShareOfDay, diffuseShareOfMonth, diffuseHourShare, drySunWetSun, hourShare } from "../../../src/physics/sky-radiation.ts";
import { diffuseShareOfHour } from "../../oracles/sky-radiation.ts";
import { cooperDeclination, hourAngle, incidenceCosine, setHourAngle } from "../../../src/physics/sun-angles.ts";
import { equationOfTime, solarLessClock, spencerDeclination, sunAzimuth, sunTimes, zenithAngle } from "../../oracles/sun-angles.ts";
import { beamRatio, dailyBeamRatio, monthOnTilted, onTilted } from "../../../src/physics/tilted-sun.ts";
import { DAY, GRAVITY } from "../../../src/units/constants.ts";
import { toSi } from "../../../src/units/unit.ts";
import type { Adaptor } from "../worked-case.ts";

type Numbers = Record<string, number>;
const HOUR_ANGLE = Math.PI / 12;
const SOUTH = Math.PI;

const wires = gauges.wires.map(({ word, area, resistance, resistance_at }) => ({
  word,
  area: toSi(area.value, area.unit),
  resistance: toSi(resistance.value, resistance.unit),
  at: toSi(resistance_at.value, resistance_at.unit),
}));
const wireOf = (word: string) => wires.find((wire) => wire.word === word) as (typeof wires)[number];

const ampacityRows: readonly AmpacityRow[] = ampacities.currents.map(({ word, values }) => ({
  area: wireOf(word).area,
  currents: values.map((current, column) => ({
    current,
    insulation: toSi(ampacities.insulations.values[column] as number, ampacities.insulations.unit),
  })),
}));

/** A pump whose wire does not matter, with a hose. */
function runOf(given: Numbers) {
  const { shutoff_head = 0, open_flow = 0, fall, voltage = 12, rated_voltage = 12, lift = 0 } = given;
  const curve =
    fall === undefined
      ? curveFromRatings(open_flow, shutoff_head, rated_voltage)
      : { ratedVoltage: rated_voltage, shutoffHead: shutoff_head, fall };
  const pump: Pump = { ...curve, noFlowCurrent: 1, openFlowCurrent: 2 };
  return { ...pumpRun({ pump, line: hoseOf(given), lift }, { voltage, resistance: 0 }), pump };
}

/** A hose from its givens, or one whose whole loss is a square. */
function hoseOf(given: Numbers): GravityLine {
  const { length = 0, bore = 0.02, roughness = 0, fittings_k = 0, viscosity = 1e-6, system } = given;
  const k = system === undefined ? fittings_k : system * 2 * GRAVITY * boreArea(bore) ** 2;
  return { length, bore, roughness, fittingsK: k, viscosity, opening: null };
}

/** Place, season and hour of the sun by Cooper's declination and the sun's own time. */
function placeOf({ latitude = 0, day = 1, solar_time = 0 }: Numbers) {
  return { latitude, declination: cooperDeclination(day), hourAngle: hourAngle(solar_time) };
}

/** Azimuths of the book are from south, west positive. */
const planeOf = ({ tilt = 0, from_south = 0 }: Numbers) => ({ tilt, azimuth: SOUTH + from_south });

/** Clearness and sunset of a day with its sunshine. */
function clearOf({ latitude = 0, day = 1, global = 0 }: Numbers) {
  const sunset = setHourAngle(latitude, cooperDeclination(day));
  return { sunset, clearness: global / dailyAboveAir(latitude, day) };
}

/** The sun by clock time in a zone, by Spencer's series. */
function clockSun(given: Numbers) {
  const { day = 1, latitude = 0, longitude = 0, zone = 0, clock = 0, cooper = 0 } = given;
  const moment = day + (clock - zone) / DAY;
  const solarTime = clock + solarLessClock(moment, longitude, zone);
  const declination = cooper === 1 ? cooperDeclination(day) : spencerDeclination(moment);
  return { latitude, declination, hourAngle: hourAngle(solarTime) };
}

const lightOf = ({ irradiance = 0, cell_temperature = 298.15 }: Numbers) => ({
  irradiance,
  cellTemperature: cell_temperature,
});
const airOf = ({ irradiance = 0, air = 0, noct = 0 }: Numbers) => ({ irradiance, air, noct });

const wiring: Record<string, Adaptor> = {
  gaugeDiameter: ({ gauge }) => ({ diameter: gaugeDiameter(gauge) }),
  copperResistance: ({ gauge, temperature, stranding }) => ({
    per_length: copperResistance(gaugeArea(gauge), temperature, stranding),
  }),
  tabulatedResistance: ({ word, temperature }) => ({ per_length: circuitResistance(wireOf(word), 0.5, temperature) }),
  copperTemperatureRatio: ({ temperature }) => ({ ratio: copperTemperatureRatio(toSi(20, "degC"), temperature) }),
  circuitDrop: ({ word, current, length, temperature, voltage }) => {
    const drop = current * circuitResistance(wireOf(word), length, temperature);
    return { drop, share: drop / voltage };
  },
  resistivityDrop: ({ resistivity, current, length, area }) => {
    const at = toSi(20, "degC");
    return { drop: current * circuitResistance({ area, resistance: resistivity / area, at }, length, at) };
  },
  areaForDrop: ({ resistivity, current, round_trip, drop }) => ({
    area: areaForDrop({ resistivity, current, roundTrip: round_trip, drop }),
  }),
  thinnestForDrop: ({ current, length, temperature, drop }) => {
    const american = wires.filter(({ word }) => word.endsWith("AWG"));
    const wire = thinnestForDrop(american, { current, oneWayLength: length, temperature, drop });
    return { gauge: Number.parseInt(wire?.word ?? "", 10) };
  },
  ampacity: ({ word, insulation }) => ({ current: ampacity(ampacityRows, wireOf(word).area, insulation) }),
  fuseChoice: ({ current, word, insulation }) => {
    const duty = {
      runningCurrent: current,
      makerFuse: null,
      ampacity: ampacity(ampacityRows, wireOf(word).area, insulation),
      stalledCurrent: null,
    };
    const choice = fuseChoice(duty, fuses.blade_sizes.values);
    return choice.state === "fits" ? { size: choice.size } : {};
  },
  fuseDistanceLimit: ({ sheathed }) => ({ length: fuseDistanceLimit(sheathed) }),
  faultCurrent: ({ voltage, resistance }) => ({ current: faultCurrent(voltage, resistance) }),
};

const batteries: Record<string, Adaptor> = {
  discharge: ({ capacity, rating_time, current, exponent }) => {
    const discharge = { capacity, ratingTime: rating_time, current, exponent };
    return { time: dischargeTime(discharge), charge: dischargedCharge(discharge) };
  },
  peukertExponent: ({ current_1, time_1, current_2, time_2 }) => ({
    exponent: peukertExponent({ current: current_1, time: time_1 }, { current: current_2, time: time_2 }),
  }),
  healthFromTest: ({ time, capacity, rating_time, current, exponent }) => ({
    health: healthFromTest(time, { capacity, ratingTime: rating_time, current, exponent }),
  }),
  coldMultiplier: ({ temperature }) => ({ multiplier: coldMultiplier(temperature) }),
};

const pumping: Record<string, Adaptor> = {
  pumpRun: (given) => {
    const { flow, head, pump } = runOf(given);
    return { flow, head, share: flow / curveFlow(pump) };
  },
  pumpSlowed: (given) => {
    const full = runOf({ ...given, voltage: given["rated_voltage"] });
    return { ratio: runOf(given).flow / full.flow };
  },
  curveFromPoints: ({ flows, heads }) => {
    const points = flows.map((flow: number, index: number) => ({ flow, head: heads[index] }));
    const curve = curveFromPoints(points, 12);
    return { shutoff_head: curve.shutoffHead, fall: curve.fall, head_at_middle: pumpHead(curve, flows[1], 12) };
  },
  dutyAtSpeed: ({ flow, head, power, ratio }) => ({ ...dutyAtSpeed({ flow, head, power }, ratio) }),
};

const curveFlow = (pump: Pump) => Math.sqrt(pump.shutoffHead / pump.fall);

const panels: Record<string, Adaptor> = {
  ratedPanelPower: (given) => ({
    power: ratedPanelPower(given["rated_power"], lightOf(given), given["coefficient"]),
  }),
  panelInAir: (given) => {
    const cell = cellTemperature(airOf(given));
    const light = { irradiance: given["irradiance"], cellTemperature: cell };
    return { cell, power: ratedPanelPower(given["rated_power"] ?? 0, light, given["coefficient"] ?? 0) };
  },
  chargingPower: ({ voc, vmp, isc, imp, controller, battery_voltage }) => {
    const label = { openVoltage: voc, bestVoltage: vmp, shortCurrent: isc, bestCurrent: imp, powerCoefficient: -0.004 };
    const curve = panelCurve(label, { irradiance: 1000, cellTemperature: 298.15 });
    const power = chargingPower(curve, controller, battery_voltage);
    return { power, current: power / battery_voltage };
  },
  fillFactor: ({ voc, vmp, isc, imp }) => ({
    fill: fillFactor({ openVoltage: voc, bestVoltage: vmp, shortCurrent: isc, bestCurrent: imp }),
  }),
  singleDiode: (given) => {
    const points = singleDiodePoints({
      lightCurrent: given["light_current"],
      saturationCurrent: given["saturation_current"],
      seriesResistance: given["series_resistance"],
      shuntResistance: given["shunt_resistance"],
      thermalVoltage: given["thermal_voltage"],
    });
    const { voltage: vmp, current: imp } = points.best;
    return { isc: points.shortCircuitCurrent, voc: points.openCircuitVoltage, vmp, imp, power: vmp * imp };
  },
};

const sun: Record<string, Adaptor> = {
  solarLessClock: ({ day, longitude, zone }) => ({
    equation: equationOfTime(day),
    ahead: solarLessClock(day, longitude, zone),
  }),
  sunPosition: (given) => {
    const place = placeOf(given);
    return {
      declination: place.declination,
      zenith: zenithAngle(place),
      from_south: sunAzimuth(place) - SOUTH,
      incidence: Math.acos(incidenceCosine(place, planeOf(given))),
      sunset_angle: setHourAngle(place.latitude, place.declination),
    };
  },
  clockSun: (given) => {
    const place = clockSun(given);
    const plane = { tilt: given["tilt"] ?? 0, azimuth: given["azimuth"] ?? SOUTH };
    return {
      zenith: zenithAngle(place),
      azimuth: sunAzimuth(place),
      declination: place.declination,
      incidence: Math.acos(incidenceCosine(place, plane)),
    };
  },
  sunTimes: ({ day, latitude, longitude, zone }) => {
    const { sunrise, noon, sunset } = sunTimes(day, latitude, longitude, zone);
    return { sunrise: sunrise ?? Number.NaN, noon, sunset: sunset ?? Number.NaN };
  },
  beamRatio: (given) => ({ ratio: beamRatio(placeOf(given), planeOf(given)) }),
  dailyAboveAir: ({ latitude, day }) => ({ radiation: dailyAboveAir(latitude, day) }),
  hourAboveAir: ({ latitude, day, from, to }) => ({
    radiation: betweenAboveAir(latitude, day, [hourAngle(from), hourAngle(to)]),
  }),
  diffuseShareOfHour: ({ clearness }) => ({ share: diffuseShareOfHour(clearness) }),
  diffuseDay: (given) => {
    const { clearness, sunset } = clearOf(given);
    return { clearness, diffuse: given["global"] * diffuseShareOfDay(clearness, sunset) };
  },
  diffuseMonth: (given) => {
    const { clearness, sunset } = clearOf(given);
    return { clearness, share: diffuseShareOfMonth(clearness, sunset) };
  },
  hourOfDay: (given) => {
    const { sunset, clearness } = clearOf(given);
    const middle = hourAngle(given["solar_time"]);
    const all = given["global"] * hourShare(middle, sunset);
    const monthly = given["monthly"] === 1 ? diffuseShareOfMonth(clearness, sunset) : 0;
    const sky = given["global"] * monthly * diffuseHourShare(middle, sunset);
    return { share: hourShare(middle, sunset), all, sky, beam: all - sky };
  },
  hourOnTilted: (given) => {
    const { latitude = 0, day = 1, solar_time = 0, global = 0, tilt = 0, albedo = 0 } = given as Numbers;
    const middle = hourAngle(solar_time);
    const above = betweenAboveAir(latitude, day, [middle - HOUR_ANGLE / 2, middle + HOUR_ANGLE / 2]);
    const diffuse = global * diffuseShareOfHour(global / above);
    const ratio = beamRatio(placeOf(given), planeOf(given));
    const received = onTilted({ global, diffuse, beamRatio: ratio, albedo }, tilt);
    return { above, diffuse, beam: global - diffuse, ratio, received };
  },
  monthOnTilted: (given) => {
    const { latitude = 0, day = 1, global = 0, albedo = 0 } = given as Numbers;
    const plane = planeOf(given);
    return {
      above: dailyAboveAir(latitude, day),
      clearness: clearOf(given).clearness,
      ratio: dailyBeamRatio(latitude, cooperDeclination(day), plane),
      received: monthOnTilted({ latitude, day, global, plane, albedo }),
    };
  },
  drySunWetSun: ({ mean, wet_days, days, ratio }) => ({ ...drySunWetSun(mean, wet_days / days, ratio) }),
};

export const functions: Record<string, Adaptor> = { ...wiring, ...batteries, ...pumping, ...panels, ...sun };
