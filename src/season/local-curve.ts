// A crop's coefficients where it stands: the first by how often the ground is wetted, the others by the record's air.

import { adjustedKc, adjustedKcEnd, type CropCurve } from "../physics/crop-coefficient.ts";
import { coefficientBetween, topSoilOfFigure, wettingCoefficient } from "../physics/wetting-coefficient.ts";
import { DAY } from "../units/constants.ts";
import type { BedPart, CropPart, GroundWetting } from "./input.ts";
import type { Air, Sky } from "./sky.ts";

/** Days of the crop's life `from` up to, not with, `until`. */
type Stage = { readonly from: number; readonly until: number };

/**
 * A crop's coefficients on its bed.
 *
 * @param sky depths of each day [m] and the air
 * @param ages days since planting on each day, below 0 where it does not stand [day]
 * @returns coefficients and the days of the stages [-]
 * @throws DomainError for a wetting or a height outside its relation
 * @validity means over all its stages in the record; wind and dryness outside the 1 to 6 m/s and 20 to 80 % of the
 *   relation count as the nearer limit; air that was not measured corrects nothing
 * @source FAO-56 Annex 7 and Eq. 59 for the first coefficient; Eq. 62 and 65 for the others
 */
export function localCurve(bed: BedPart, crop: CropPart, sky: Sky, ages: Int32Array): CropCurve {
  const [initial, development, middle, late] = crop.stages;
  const grown = initial + development;
  const { groundWetting } = bed;
  const air = bed.airCorrects && !bed.covered ? (sky.air ?? null) : null;
  const inMiddle = air && meanAir(air, ages, { from: grown, until: grown + middle });
  const inLate = air && meanAir(air, ages, { from: grown + middle, until: grown + middle + late });
  const { height } = crop;
  return {
    kcInitial: groundWetting
      ? (firstCoefficient(groundWetting, bed, meanOver(sky.eto, ages, { from: 0, until: initial })) ??
        crop.kcInitial)
      : crop.kcInitial,
    kcMiddle: inMiddle ? adjustedKc({ coefficient: crop.kcMiddle, height, ...inMiddle }) : crop.kcMiddle,
    kcEnd: inLate ? adjustedKcEnd({ coefficient: crop.kcEnd, height, ...inLate }) : crop.kcEnd,
    stages: crop.stages,
  };
}

function firstCoefficient(wetting: GroundWetting, bed: BedPart, outside: number | null): number | null {
  const reference = (outside ?? 0) * bed.coverFactor;
  if (!(reference > 0)) return null;
  const days = wetting.every / DAY;
  const after = (event: Parameters<typeof topSoilOfFigure>[0]) =>
    wettingCoefficient(days, reference, topSoilOfFigure(event, reference));
  const heavy = after(wetting.coarse ? "heavy_coarse" : "heavy_fine");
  return coefficientBetween(wetting.depth, after("light"), heavy) * wetting.left;
}

/** Mean of what was measured on the days of a stage; null where nothing was. */
function meanOver(series: Float64Array, ages: Int32Array, { from, until }: Stage): number | null {
  let sum = 0;
  let days = 0;
  for (let day = 0; day < ages.length; day++) {
    const age = ages[day] as number;
    const value = series[day] as number;
    if (age < from || age >= until || Number.isNaN(value)) continue;
    sum += value;
    days++;
  }
  return days === 0 ? null : sum / days;
}

const within = (value: number, [low, high]: readonly [number, number]) =>
  Math.min(high, Math.max(low, value));

function meanAir(air: Air, ages: Int32Array, stage: Stage) {
  const wind = meanOver(air.wind, ages, stage);
  const lowestHumidity = meanOver(air.lowestHumidity, ages, stage);
  if (wind === null || lowestHumidity === null) return null;
  return { wind: within(wind, [1, 6]), lowestHumidity: within(lowestHumidity, [0.2, 0.8]) };
}
