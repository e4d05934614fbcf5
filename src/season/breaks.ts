// Parts that are noted broken: from that day on the season is reckoned without them, until they are noted mended.

import { edgesTo, type Network, runs, whyStopped, withStopped } from "../network/network.ts";
import type { BatteryPart, PanelCharge, PartEvent, SeasonInput } from "./input.ts";

/** A season's input that knows what broke and was mended; the very same where nothing was. */
export const withBreaks = (input: SeasonInput, breaks: readonly PartEvent[]): SeasonInput =>
  breaks.length === 0 ? input : { ...input, breaks };

/**
 * Ids of what is broken on a day.
 *
 * @param breaks in order: the last word on a part stands
 * @param date [days since 1970-01-01]
 */
export function brokenOn(breaks: readonly PartEvent[] = [], date: number): ReadonlySet<string> {
  const broken = new Set<string>();
  for (const { what, where, date: on } of breaks) {
    if (on > date) continue;
    if (what === "broke") broken.add(where);
    else broken.delete(where);
  }
  return broken;
}

/**
 * The input as it works on a day, without what is broken.
 *
 * @param date [days since 1970-01-01]
 * @returns the very same where nothing is; a broken line carries nothing, a roof catches nothing, and neither cans nor a
 *   pump water a bed that are broken themselves or whose tank, pump, battery or panel is
 */
export function workingOn(input: SeasonInput, date: number): SeasonInput {
  const broken = brokenOn(input.breaks, date);
  if (broken.size === 0) return input;
  const network = withStopped(input.network, new Map([...broken].map((id) => [id, "it is broken"])));
  const isBroken = (id: string | null | undefined) => id != null && broken.has(id);
  const unpowered = (id: string | null) =>
    id !== null && edgesTo(network, "powers", id).some(({ from }) => broken.has(from));
  const dead = new Set([
    ...input.carries.filter(({ id, from }) => isBroken(id) || isBroken(from)).map(({ id }) => id),
    ...input.deliveries
      .filter(
        ({ id, from, pump, battery }) =>
          [id, from, pump, battery].some(isBroken) || [id, pump].some(unpowered),
      )
      .map(({ id }) => id),
  ]);
  return {
    ...input,
    network,
    tanks: input.tanks.map((tank) => (isBroken(tank.overflowsTo) ? { ...tank, overflowsTo: null } : tank)),
    lines: input.lines.map((part) => ({ ...part, blocked: part.blocked ?? whyStopped(network, part.id) })),
    roofs: input.roofs.map((roof) =>
      isBroken(roof.id) || isBroken(roof.drainsTo) ? { ...roof, drainsTo: null } : roof,
    ),
    batteries: input.batteries.map((battery) => chargedBy(network, battery)),
    beds: input.beds.map((bed) => ({ ...bed, wateredBy: bed.wateredBy.filter((id) => !dead.has(id)) })),
  };
}

/** A battery with what its panels bring that still work. */
function chargedBy(network: Network, battery: BatteryPart): BatteryPart {
  const panels = edgesTo(network, "charges", battery.id);
  if (panels.every(runs)) return battery;
  const working = panels.filter(runs).map(({ from }) => battery.panels?.[from]);
  const sum = (of: (panel: PanelCharge) => readonly number[], months: readonly number[]) =>
    months.map((_, month) => working.reduce((all, panel) => all + ((panel && of(panel)[month]) ?? 0), 0));
  return {
    ...battery,
    dryCharge: sum(({ dry }) => dry, battery.dryCharge),
    wetCharge: sum(({ wet }) => wet, battery.wetCharge),
  };
}
