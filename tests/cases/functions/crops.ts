// Adaptors for worked examples of weather, crops, soil water, giving water and carrying it.

import climates from "../../../shared/climates.json" with { type: "json" };
import crops from "../../../shared/crops.json" with { type: "json" };
import soils from "../../../shared/soils.json" with { type: "json" };
import * as air from "../../../src/physics/air.ts";
import { cansFor, tripsFor } from "../../../src/physics/carrying.ts";
import { coveredPenmanMonteith } from "../../../src/physics/covered-evapotranspiration.ts";
import * as crop from "../../../src/physics/crop-coefficient.ts";
import { firstSoakVolume } from "../../../src/physics/infiltration.ts";
import * as mulch from "../../../src/physics/mulch.ts";
import * as reference from "../../../src/physics/reference-evapotranspiration.ts";
import * as soil from "../../../src/physics/soil-water.ts";
import * as sun from "../../../src/physics/sun.ts";
import * as wetting from "../../../src/physics/wetting-coefficient.ts";
import { toSi } from "../../../src/units/unit.ts";
import { vapourFromHumidity } from "../../oracles/air.ts";
import * as dual from "../../oracles/dual-coefficient.ts";
import { availableWater, heldWater, soilDay } from "../../oracles/soil-water.ts";
import { solarFromSunshine } from "../../oracles/sun.ts";
import type { Adaptor } from "../worked-case.ts";

type Numbers = Record<string, number>;
type Listed = { readonly value: number | readonly number[]; readonly range?: readonly number[]; readonly unit?: string };

const numbered = (name: string, values: readonly number[]): Numbers =>
  Object.fromEntries(values.map((value, index) => [`${name}_${index + 1}`, value]));

/** Both ends of a listed value in SI. */
function ends({ value, range, unit }: Listed): readonly [number, number] {
  const both = range ?? (typeof value === "number" ? [value, value] : value);
  return [toSi(both[0] as number, unit ?? "1"), toSi(both[1] as number, unit ?? "1")];
}

const weather: Record<string, Adaptor> = {
  angle: ({ angle }) => ({ angle }),
  sun_of_day: ({ latitude, day }) => {
    const radiation = sun.extraterrestrialRadiation(latitude, day);
    return {
      distance_factor: sun.sunDistanceFactor(day),
      declination: sun.solarDeclination(day),
      sunset: sun.sunsetHourAngle(latitude, day),
      radiation,
      depth: reference.evaporationOfRadiation(radiation),
      daylight: sun.daylightHours(latitude, day),
    };
  },
  depth_of_radiation: ({ radiation }) => ({ depth: reference.evaporationOfRadiation(radiation) }),
  air_pressure: ({ elevation }) => {
    const pressure = air.airPressure(elevation);
    return { pressure, psychrometric: air.psychrometricConstant(pressure) };
  },
  saturation: ({ highest, lowest }) => ({
    of_highest: air.saturationVapourPressure(highest),
    of_lowest: air.saturationVapourPressure(lowest),
    mean: air.meanSaturationVapourPressure(highest, lowest),
    of_mean: air.saturationVapourPressure((highest + lowest) / 2),
    slope: air.vapourPressureSlope((highest + lowest) / 2),
  }),
  wet_bulb: ({ wet, elevation }) => ({
    pressure: air.airPressure(elevation),
    of_wet: air.saturationVapourPressure(wet),
  }),
  vapour_of_humidity: ({ highest, lowest, most, least }) => ({
    from_both: vapourFromHumidity({ highest, lowest, highestHumidity: most, lowestHumidity: least }),
  }),
  net_radiation: (given) => {
    const longwave = reference.netLongwaveRadiation({
      highest: given.highest,
      lowest: given.lowest,
      vapour: given.vapour,
      solar: given.solar,
      clearSky: given.clear_sky,
    });
    const shortwave = reference.netShortwaveRadiation(given.solar);
    const net = shortwave - longwave;
    return { longwave, shortwave, net, depth: reference.evaporationOfRadiation(net) };
  },
  wind_at_two_metres: ({ speed, height }) => ({ wind: air.windAtTwoMetres(speed, height) }),
  sun_of_temperature: ({ latitude, day, highest, lowest, elevation, adjustment }) => {
    const extraterrestrial = sun.extraterrestrialRadiation(latitude, day);
    const clearSky = sun.clearSkyRadiation(extraterrestrial, elevation);
    const range = highest - lowest;
    return {
      extraterrestrial,
      clear_sky: clearSky,
      solar: sun.solarFromTemperature({ range, extraterrestrial, clearSky, adjustment }),
    };
  },
  penman_monteith: (given) => {
    const extraterrestrial = sun.extraterrestrialRadiation(given.latitude, given.day);
    const daylight = sun.daylightHours(given.latitude, given.day);
    const { highest, lowest, most: highestHumidity, least: lowestHumidity } = given;
    const humid = highestHumidity !== undefined;
    const vapour = humid ? vapourFromHumidity({ highest, lowest, highestHumidity, lowestHumidity }) : null;
    const parts = reference.penmanMonteithParts({
      highest,
      lowest,
      vapour: given.vapour ?? vapour,
      wind: given.wind_height ? air.windAtTwoMetres(given.wind, given.wind_height) : (given.wind ?? null),
      sun: given.sunshine ? solarFromSunshine(extraterrestrial, given.sunshine, daylight) : null,
      elevation: given.elevation,
      latitude: given.latitude,
      dayOfYear: given.day,
      groundHeat: given.ground_heat ?? 0,
      ...(given.adjustment === undefined ? {} : { sunAdjustment: given.adjustment }),
    });
    return {
      evapotranspiration: parts.evapotranspiration,
      by_radiation: parts.radiationPart,
      by_wind: parts.windPart,
      net: parts.netRadiation,
      longwave: parts.netLongwave,
      solar: parts.solar,
      clear_sky: parts.clearSky,
      vapour: parts.vapour,
      saturation: parts.saturation,
      extraterrestrial,
      daylight,
    };
  },
  covered: (given) => {
    const { highest, lowest, most: highestHumidity, least: lowestHumidity, latitude, elevation } = given;
    const daylight = sun.daylightHours(latitude, given.day);
    const outside = {
      highest,
      lowest,
      latitude,
      elevation,
      dayOfYear: given.day,
      vapour: vapourFromHumidity({ highest, lowest, highestHumidity, lowestHumidity }),
      wind: air.windAtTwoMetres(given.wind, given.wind_height),
      sun: solarFromSunshine(sun.extraterrestrialRadiation(latitude, given.day), given.sunshine, daylight),
    };
    const share = (warmer: number) =>
      coveredPenmanMonteith(outside, { lightShare: given.light, wind: given.wind_under, warmer }) /
      reference.penmanMonteith(outside);
    return { factor: share(given.warmer), warmth_adds: share(given.warmer) - share(0) };
  },
  hargreaves: ({ latitude, day, highest, lowest, mean, radiation }) => ({
    evapotranspiration: reference.hargreaves({
      highest,
      lowest,
      extraterrestrial: radiation ?? sun.extraterrestrialRadiation(latitude, day),
      ...(mean === undefined ? {} : { mean }),
    }),
  }),
};

const coefficients: Record<string, Adaptor> = {
  kc_of_light_wetting: ({ days, reference: eto }) => {
    const coefficient = wetting.wettingCoefficient(days, eto, wetting.topSoilOfFigure("light", eto));
    return { coefficient, crop_use: coefficient * eto };
  },
  kc_of_wetting: ({ days, depth, reference: eto, soil: event, wetted }) => {
    const light = wetting.wettingCoefficient(days, eto, wetting.topSoilOfFigure("light", eto));
    const heavy = wetting.wettingCoefficient(days, eto, wetting.topSoilOfFigure(event, eto));
    const between = wetting.coefficientBetween(depth / wetted, light, heavy) * wetted;
    return { light, heavy, coefficient: between, crop_use: between * eto };
  },
  days_between_wettings: ({ days, wettings }) => ({ days: dual.daysBetweenWettings(days, wettings) }),
  adjusted_kc: ({ coefficient, wind, humidity, height }) => ({
    coefficient: crop.adjustedKc({ coefficient, wind, lowestHumidity: humidity, height }),
  }),
  kc_on_day: ({ coefficients: [kcInitial, kcMiddle, kcEnd], stages, day }) => ({
    // The source counts the day of planting as day 1.
    coefficient: crop.cropCoefficient({ kcInitial, kcMiddle, kcEnd, stages }, day - 1) ?? Number.NaN,
  }),
  kc_of_ten_days: ({ coefficients: [kcInitial, kcMiddle, kcEnd], stages, reference: eto }) => {
    const curve = { kcInitial, kcMiddle, kcEnd, stages };
    const means = (eto as number[]).map((_, decade) => {
      const days = Array.from({ length: 10 }, (__, day) => crop.cropCoefficient(curve, decade * 10 + day) ?? Number.NaN);
      return days.reduce((sum, one) => sum + one, 0) / 10;
    });
    return {
      ...numbered("coefficient", means),
      ...numbered("crop_use", means.map((mean, decade) => mean * (eto as number[])[decade]!)),
    };
  },
  kc_under_film: ({ coefficients: [kcInitial, kcMiddle, kcEnd], cut, initial }) => {
    const curve = mulch.filmedCurve({ kcInitial, kcMiddle, kcEnd, stages: [1, 1, 1, 1] }, cut, initial);
    return { initial: curve.kcInitial, middle: curve.kcMiddle, end: curve.kcEnd };
  },
  kc_under_mulch: ({ coefficients: [kcInitial, kcMiddle, kcEnd], basal: [middle, end], cover }) => {
    const curve = { kcInitial, kcMiddle, kcEnd, stages: [1, 1, 1, 1] as const };
    const kept = mulch.mulchedCurve(curve, { middle, end }, cover, 0.5);
    return { initial: kept.kcInitial, middle: kept.kcMiddle, end: kept.kcEnd };
  },
  kc_of_intercrop: ({ shares, heights, coefficients: kcs }) => ({
    coefficient: crop.intercropCoefficient(
      (shares as number[]).map((share, index) => ({ share, height: heights[index], coefficient: kcs[index] })),
    ),
  }),
  dual_kc: ({ basal, wind, humidity, height, wetted, drip }) => {
    const most = dual.mostCoefficient(basal, crop.climateCorrection({ wind, lowestHumidity: humidity, height }));
    const covered = dual.coveredShare(basal, most, height);
    const exposed = dual.exposedShare(covered, wetted, drip);
    const top = { depletion: 0, total: 0.02, readily: 0.009 };
    const evaporation = dual.evaporationCoefficient({ ...top, exposed, basal, most });
    return { most, covered, exposed, evaporation, coefficient: basal + evaporation };
  },
  top_soil_days: (given) => {
    const days: dual.TopSoilResult[] = [];
    let depletion: number = given.depletion;
    for (const [index, eto] of (given.reference as number[]).entries()) {
      const wetted = given.rain?.[index] > 0 || given.wet_by_rain_from <= index + 1 ? 1 : (given.wetted ?? 1);
      const day = dual.topSoilDay({
        depletion,
        total: given.total,
        readily: given.readily,
        rain: given.rain?.[index] ?? 0,
        irrigation: given.irrigation?.[index] ?? 0,
        wetted: given.wetted ?? 1,
        exposed: Math.min(given.open?.[index] ?? 1, wetted),
        basal: given.basal?.[index] ?? given.basal_constant,
        most: given.most,
        reference: eto,
      });
      depletion = day.depletion;
      days.push(day);
    }
    const use = days.map(({ cropUse }) => cropUse);
    return {
      ...numbered("depletion", days.map((day) => day.depletion)),
      ...numbered("crop_use", use),
      ...numbered("drained", days.map(({ drained }) => drained)),
      crop_use_in_all: use.reduce((sum, one) => sum + one, 0),
    };
  },
};

const soilWater: Record<string, Adaptor> = {
  available_water: ({ field_capacity, wilting_point, root_depth, depletion }) => {
    const held = heldWater(field_capacity, wilting_point);
    return availableWater({ held, rootDepth: root_depth, depletion });
  },
  dry_down: ({ field_capacity, wilting_point, root_depth, depletion, start, reference: eto, coefficient, days }) => {
    const held = heldWater(field_capacity, wilting_point);
    const { total, readily } = availableWater({ held, rootDepth: root_depth, depletion });
    const out: Numbers = { total, readily };
    let missing: number = start;
    for (let day = 1; day <= days; day += 1) {
      const ks = soil.stress(missing, total, readily);
      const cropUse = ks * coefficient * eto;
      missing = soilDay({ depletion: missing, total, rain: 0, irrigation: 0, cropUse }, "early").depletion;
      Object.assign(out, { [`stress_${day}`]: ks, [`crop_use_${day}`]: cropUse, [`depletion_${day}`]: missing });
    }
    return out;
  },
  schedule: ({ held, roots, depletion, start, rain: wet, irrigation, crop_use, order }) => {
    const out: Numbers = {};
    let missing: number = start;
    for (const [index, cropUse] of (crop_use as number[]).entries()) {
      const { total, readily } = availableWater({ held, rootDepth: roots[index], depletion });
      const given = { depletion: missing, total, rain: wet[index], irrigation: irrigation[index], cropUse };
      const day = soilDay(given, order);
      missing = day.depletion;
      Object.assign(out, {
        [`readily_${index + 1}`]: readily,
        [`depletion_${index + 1}`]: missing,
        [`drained_${index + 1}`]: day.drained,
      });
    }
    return out;
  },
  depletion_fraction: ({ table, crop_use }) => ({ fraction: soil.depletionFraction(table, crop_use) }),
  yield_loss: ({ response, share }) => ({ loss: soil.yieldLoss(response, share) }),
};

const tables: Record<string, Adaptor> = {
  crop_table: ({ crop: word }) => {
    const row = (crops.crops as Record<string, unknown>)[word] as {
      readonly kc: Record<string, Listed>;
      readonly kcb: Record<string, Listed>;
      readonly height: Listed;
      readonly root_depth: Listed;
      readonly depletion: Listed;
      readonly stages: readonly { readonly days: readonly number[]; readonly total: number }[];
    };
    const out: Numbers = { depletion: ends(row.depletion)[0], height: ends(row.height)[0] };
    for (const kind of ["kc", "kcb"] as const) {
      for (const [stage, listed] of Object.entries(row[kind])) {
        out[`${kind}_${stage}`] = ends(listed)[0];
        out[`${kind}_${stage}_most`] = ends(listed)[1];
      }
    }
    [out.root_least, out.root_most] = ends(row.root_depth) as [number, number];
    for (const [index, { days, total }] of row.stages.entries()) {
      Object.assign(out, numbered(`listing_${index + 1}_days`, days), { [`listing_${index + 1}_total`]: total });
    }
    return out;
  },
  humidity_class: ({ class: word }) => {
    const row = (climates.humidity as Record<string, Record<"lowest" | "mean", Listed>>)[word];
    return { lowest: ends(row!.lowest)[0], mean: ends(row!.mean)[0] };
  },
  soil_table: ({ soil: word }) => {
    const row = (soils.soils as Record<string, unknown>)[word] as Record<string, Listed>;
    const out: Numbers = {};
    for (const name of ["field_capacity", "wilting_point", "held", "readily_evaporable", "total_evaporable"]) {
      const [least, most] = ends(row[name] as Listed);
      Object.assign(out, { [`${name}_least`]: least, [`${name}_most`]: most, [name]: (least + most) / 2 });
    }
    return { ...out, held_listed: (row.held as Listed).value as number, intake: ends(row.intake_rate as Listed)[0] };
  },
};

const handsAndHoses: Record<string, Adaptor> = {
  first_soak: (given) => ({
    volume: firstSoakVolume({
      area: given.area,
      wettedShare: 1,
      held: given.held,
      depth: given.depth,
      dryness: given.dryness,
      efficiency: given.efficiency,
    }),
  }),
  pan: ({ ground, fetch, loss }) => {
    const grounds: Record<string, Record<string, Record<string, Listed>>> = climates.pan_coefficients;
    const row = grounds[ground]?.[fetch] ?? {};
    return Object.fromEntries(Object.entries(row).map(([humidity, listed]) => [humidity, ends(listed)[0] * loss]));
  },
  cans: ({ volume, can, at_once }) => ({
    cans: cansFor(volume, can),
    trips: tripsFor(volume, can, at_once ?? 1),
  }),
};

export const functions: Record<string, Adaptor> = {
  ...weather,
  ...coefficients,
  ...soilWater,
  ...tables,
  ...handsAndHoses,
};
