// A limit as a grower would say it: one that is round in meters is seldom so in feet.

import { fromSi, toSi } from "./unit.ts";

const DUST = 1e-9;

/**
 * Where a limit is not said in three figures, the next value of two figures on its allowed side; less than a foot in inches.
 *
 * @param si the limit, in the SI unit of its measure
 * @param least whether it is the least that is allowed; else the most
 */
export function limitSaid(
  si: number,
  unit: string,
  least: boolean,
): { readonly si: number; readonly unit: string } {
  const said = unit === "ft" && Math.abs(fromSi(si, unit)) < 1 && si !== 0 ? "in" : unit;
  const exact = fromSi(si, said);
  const size = Math.abs(exact);
  if (Math.abs(Number(exact.toPrecision(3)) - exact) <= DUST * size) return { si, unit: said };
  const step = 10 ** (Math.floor(Math.log10(size)) - 1);
  const steps = exact / step;
  return { si: toSi((least ? Math.ceil(steps) : Math.floor(steps)) * step, said), unit: said };
}
