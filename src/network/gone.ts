// What cannot take part once other parts are gone: all that leans on them.

import { edgesFrom, edgesTo, idsOf, type Network, roleOf } from "./network.ts";
import { driverOf } from "./power.ts";

/** A part that goes, and the one it leans on. */
export type Leaning = { readonly id: string; readonly on: string };

/**
 * Parts that lean on gone ones, and are gone then too: lines and whatever draws, by the tank or joint at their ends; hoses,
 * by the battery that drives them; beds, by the last of their waterers.
 *
 * @param gone ids
 * @param unlimited ids of hoses of which it is not known what they ask of their battery: they do without
 */
export function leaningOn(
  network: Network,
  gone: ReadonlySet<string>,
  unlimited: ReadonlySet<string>,
): readonly Leaning[] {
  const lost = new Set(gone);
  const found: Leaning[] = [];
  const drop = (id: string, on: string | null): void => {
    if (on === null || lost.has(id)) return;
    lost.add(id);
    found.push({ id, on });
  };
  for (const { id, ends } of waterParts(network)) drop(id, ends.find((end) => lost.has(end)) ?? null);
  for (const waterer of idsOf(network, "waterer")) {
    const driver = unlimited.has(waterer) ? null : driverOf(network, waterer);
    if (driver !== null && lost.has(driver) && roleOf(network, driver) === "battery") drop(waterer, driver);
  }
  for (const bed of idsOf(network, "bed")) {
    const by = edgesTo(network, "waters", bed).map(({ from }) => from);
    if (by.every((waterer) => lost.has(waterer))) drop(bed, by[0] ?? null);
  }
  return found;
}

/** Lines and whatever draws, each with the tanks and joints at its ends. */
function waterParts(network: Network): readonly { readonly id: string; readonly ends: readonly string[] }[] {
  return network.edges.flatMap(({ kind, by, from, to }) => {
    if (kind === "feeds") return [{ id: by, ends: to === null ? [from] : [from, to] }];
    return kind === "draws" && to !== null ? [{ id: to, ends: [from] }] : [];
  });
}

/** Where a roof's water or a tank's overflow goes, among the parts that are still there; null: on the ground. */
export function goesTo(network: Network, kind: "catches" | "spills", id: string): string | null {
  return edgesFrom(network, kind, id).find(({ stopped }) => stopped === null)?.to ?? null;
}
