// What the models of a gravity line share: the hose as the physics wants it, its tanks, what a joint feeds it with.

import { numberOf, numberOrNull } from "../../graph/readers.ts";
import type { ModelInput } from "../../graph/types.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import { openingOf } from "../../physics/orifice.ts";
import type { Vessel } from "../../physics/vessel.ts";

/** What the hose itself is, without its valve. */
export const HOSE = ["length", "bore", "roughness", "all_k", "site.water_viscosity", "site.water_density"];

/** What an opening that nobody timed hangs on. */
export const UNTIMED = ["measured.opening", "valve_coefficient"];

/** The opening before any timing of this line: as it was kept, else by the seat; null where no valve is fitted. */
export function untimedOpening(input: ModelInput): number | null {
  const kept = numberOrNull(input, "measured.opening");
  const bore = numberOrNull(input, "valve_bore");
  return kept ?? (bore === null ? null : openingOf(bore, numberOf(input, "valve_coefficient")));
}

/** The hose with a valve's opening at its end, or none. */
export function hoseOf(input: ModelInput, opening: number | null): GravityLine {
  return {
    length: numberOf(input, "length"),
    bore: numberOf(input, "bore"),
    roughness: numberOf(input, "roughness"),
    fittingsK: numberOf(input, "all_k"),
    opening,
    viscosity: numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density"),
  };
}

/** A tank's vessel through a link, or null where the link leads to no tank. */
export function vesselOrNull(input: ModelInput, name: string): Vessel | null {
  const vessel = input.values[name];
  return typeof vessel === "object" && vessel !== null ? (vessel as Vessel) : null;
}

/** A tank's vessel through a link that leads to a tank. */
export function vesselAt(input: ModelInput, name: string): Vessel {
  const vessel = vesselOrNull(input, name);
  if (!vessel) throw new Error(`${name} is not a tank.`);
  return vessel;
}

/** Why a name has no value, in words. */
export function whyNone(input: ModelInput, name: string): string {
  const result = input.results[name];
  return result?.state === "none" ? result.reason : "there is nothing to work it out from";
}

/** The one line that fills a joint, with the tank it comes from. */
export type Feed = {
  readonly line: GravityLine;
  readonly vessel: Vessel;
  readonly floor: number;
  readonly level: number;
  readonly outlet: number;
  /** Height that the tank's water must stand over for the line to take any [m]. */
  readonly runsFrom: number;
};

/** What a line behind a joint is worked out from as if only it ran. */
export const BEHIND = ["from.feed", "end_height", "lift"];

/** The line that fills the joint at a line's start, and the drop over both while only these run [m]; null: no such joint. */
export function dropBehind(
  input: ModelInput,
): { readonly before: GravityLine; readonly head: number } | null {
  const feed = input.values["from.feed"] as Feed | undefined;
  if (!feed) return null;
  const head = feed.floor + feed.level - numberOf(input, "end_height") - numberOf(input, "lift");
  return { before: feed.line, head };
}
