// Diffuse share of an hour, which the published hours on tilted planes start from.

import { requireNotNegative } from "../../src/physics/domain-error.ts";

const BOOK = "Duffie and Beckman, Solar Engineering of Thermal Processes";

function polynomial(coefficients: readonly number[], at: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * at + coefficient, 0);
}

/**
 * Share of an hour's sunshine that comes from the whole sky, by its clearness.
 *
 * @param clearness of the hour: sunshine over that above the air, 0 or more [-]
 * @returns diffuse share [-]
 * @throws DomainError for a negative clearness
 * @source Erbs et al. (1982), Duffie and Beckman eq. 2.10.1 (coefficients read in python-hvac)
 */
export function diffuseShareOfHour(clearness: number): number {
  requireNotNegative("clearness", clearness, BOOK);
  if (clearness <= 0.22) return 1 - 0.09 * clearness;
  if (clearness > 0.8) return 0.165;
  return polynomial([0.9511, -0.1604, 4.388, -16.638, 12.336], clearness);
}
