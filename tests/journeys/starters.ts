// Which starters a journey opens that is made for each of them.

import { readdirSync } from "node:fs";
import { tries } from "../tries.ts";

/** Seasons of the demo that `open` opens: a fourth of them, a fourth of the work, but for LONG=1. */
export const DEMO_SEASONS = tries(20, 5);

export const TEMPLATES = new URL("../../templates/", import.meta.url);

/** Four that have every kind of part among them. */
const FEW = [
  "hillside-totes.json",
  "panel-alone-metric.json",
  "pump-battery-panel.json",
  "three-roofs-two-tunnels.json",
];

const ALL = readdirSync(TEMPLATES);

/** File names: all of them with LONG=1. */
export const STARTERS: readonly string[] = tries(ALL.length, FEW.length) === ALL.length ? ALL : FEW;
