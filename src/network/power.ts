// What drives a pump and what charges a battery.

import { edgesTo, type Network, roleOf, runs } from "./network.ts";

/** The battery or panel that drives a hose or pump, through its pump's card where it has one; null: nothing known. */
export function driverOf(network: Network, driven: string): string | null {
  const by = edgesTo(network, "powers", driven).find(runs)?.from ?? null;
  return by !== null && roleOf(network, by) === "pump" ? driverOf(network, by) : by;
}

/** Panels that charge a battery. */
export const chargersOf = (network: Network, battery: string): readonly string[] =>
  edgesTo(network, "charges", battery).map(({ from }) => from);
