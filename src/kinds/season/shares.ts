// The kinds that take part in the season, each as its room says it.

import { batterySeason } from "../battery/season.ts";
import { bedSeason } from "../bed/season.ts";
import { carrySeason } from "../carry/season.ts";
import { deliverySeason } from "../delivery/season.ts";
import { drawSeason } from "../draw/season.ts";
import { lineSeason } from "../line/season.ts";
import { panelSeason } from "../panel/season.ts";
import { pumpSeason } from "../pump/season.ts";
import { roofSeason } from "../roof/season.ts";
import type { SeasonShare } from "../season-share.ts";
import { tankSeason } from "../tank/season.ts";
import { teeSeason } from "../tee/season.ts";

export const SHARES: Readonly<Record<string, SeasonShare>> = {
  battery: batterySeason,
  bed: bedSeason,
  carry: carrySeason,
  delivery: deliverySeason,
  draw: drawSeason,
  line: lineSeason,
  panel: panelSeason,
  pump: pumpSeason,
  roof: roofSeason,
  tank: tankSeason,
  tee: teeSeason,
};
