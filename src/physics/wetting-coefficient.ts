// Crop coefficient of nearly bare ground, by how often it is wetted: the soil dries in two stages.

import { MILLIMETRE } from "../units/constants.ts";
import { DomainError, requirePositive } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Depths that the top of the soil can lose to the air: in all (TEW), and at full rate (REW) [m]. */
export type TopSoil = { readonly total: number; readonly readily: number };

/** What an event of wetting is: light (up to 10 mm), or heavy (40 mm or more) on a coarse or a finer soil. */
export type WettingEvent = "light" | "heavy_coarse" | "heavy_fine";

const MOST = 1.15;

/**
 * Depths that the top of the soil can lose, as Fig. 29 and 30 of the source were drawn for.
 * light: 10 and min(max(2.5, 6 / ETo^0.5), 7); coarse: min(15, 7 ETo^0.5) and 6; fine: min(28, 13 ETo^0.5) and 9, mm
 * @param event - kind of wetting and soil [-]
 * @param reference - reference evapotranspiration of a day [m]
 * @returns total and readily evaporable depth [m]
 * @throws DomainError when the reference is not above zero
 * @validity the initial stage
 * @source FAO-56 Annex 7
 */
export function topSoilOfFigure(event: WettingEvent, reference: number): TopSoil {
  requirePositive("reference evapotranspiration", reference, `${BOOK}, Annex 7`);
  const root = Math.sqrt(reference / MILLIMETRE);
  if (event === "light") {
    return { total: 10 * MILLIMETRE, readily: Math.min(Math.max(2.5, 6 / root), 7) * MILLIMETRE };
  }
  const [most, slope, readily] = event === "heavy_coarse" ? [15, 7, 6] : [28, 13, 9];
  const total = Math.min(most, slope * root);
  return { total: total * MILLIMETRE, readily: Math.min(readily, total - 0.01) * MILLIMETRE };
}

/**
 * Initial crop coefficient from the days between wettings.
 * [TEW - (TEW - REW) exp(-(tw - t1) Eso (1 + REW / (TEW - REW)) / TEW)] / (tw ETo), Eso = 1.15 ETo, t1 = REW / Eso
 * @param days - days between two wettings tw [day]
 * @param reference - reference evapotranspiration of a day [m]
 * @param soil - depths that the top of the soil can lose [m]
 * @returns initial coefficient, 1.15 at the most and wherever wetting comes before t1 [-]
 * @throws DomainError when a value is not above zero or REW is not below TEW
 * @validity the initial stage, ground nearly bare
 * @source FAO-56 Annex 7, Eq. 7-3 to 7-4
 */
export function wettingCoefficient(days: number, reference: number, soil: TopSoil): number {
  requirePositive("days between wettings", days, `${BOOK}, Annex 7`);
  requirePositive("reference evapotranspiration", reference, `${BOOK}, Annex 7`);
  if (!(soil.readily > 0 && soil.readily < soil.total)) {
    throw new DomainError(
      "readily evaporable water",
      soil.readily,
      "above 0, below the total",
      `${BOOK}, Annex 7`,
    );
  }
  const fullRate = MOST * reference;
  const firstStage = soil.readily / fullRate;
  if (days <= firstStage) return MOST;
  const left = soil.total - soil.readily;
  const decay = ((days - firstStage) * fullRate * (1 + soil.readily / left)) / soil.total;
  return Math.min(MOST, (soil.total - left * Math.exp(-decay)) / (days * reference));
}

/**
 * Initial coefficient for wettings between light and heavy ones.
 * Kc = Kc light + (I - 10) / (40 - 10) (Kc heavy - Kc light), I in mm; the nearer figure outside 10 to 40 mm
 * @param depth - mean depth of a wetting [m]
 * @param light - coefficient for light wettings [-]
 * @param heavy - coefficient for heavy wettings [-]
 * @returns initial coefficient [-]
 * @throws DomainError when the depth is not above zero
 * @validity the initial stage
 * @source FAO-56 Eq. 59
 */
export function coefficientBetween(depth: number, light: number, heavy: number): number {
  requirePositive("depth of a wetting", depth, `${BOOK}, Eq. 59`);
  const share = Math.min(1, Math.max(0, (depth / MILLIMETRE - 10) / (40 - 10)));
  return light + share * (heavy - light);
}
