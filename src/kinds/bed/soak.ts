// The first soak of a bed that is dry to the bottom: how much in all, in passes that do not run off, and how deep it went.

import soilTable from "../../../shared/soils.json";
import { outcomes } from "../../graph/outcomes.ts";
import { numberOf, numberOrNull, wordOf } from "../../graph/readers.ts";
import type { Model, ModelInput, Outputs } from "../../graph/types.ts";
import { evaporableWater } from "../../physics/dual-coefficient.ts";
import { firstSoakVolume, soakPasses, wettedDepth } from "../../physics/infiltration.ts";
import type { TopSoil } from "../../physics/wetting-coefficient.ts";
import { toSi } from "../../units/unit.ts";

type Listed = { readonly value: number; readonly unit?: string };

type SoilRow = {
  readonly label: string;
  readonly held: Listed;
  readonly intake_rate: Listed;
  readonly intake_rate_covered?: Listed;
  readonly most_at_once: Listed;
  readonly field_capacity: Listed;
  readonly wilting_point: Listed;
  readonly readily_evaporable: Listed;
};

const SOILS: Readonly<Record<string, SoilRow>> = soilTable.soils;

/** A soil of the tables; null where no table has the word. */
export const soilRow = (word: string): SoilRow | null => SOILS[word] ?? null;

/** How deep bare ground dries [m]: FAO-56 gives 0.10 to 0.15. */
const DRIES_TO = 0.1;

/** What the layer that dries can lose in all, and at full rate [m]. */
export const evaporableOf = (soil: SoilRow): TopSoil => ({
  total: evaporableWater(soil.field_capacity.value, soil.wilting_point.value, DRIES_TO),
  readily: si(soil.readily_evaporable),
});

/** Sand and loamy sand wet and dry as coarse soils do. */
export const isCoarse = (word: string): boolean => word === "sand" || word === "loamy_sand";

const si = ({ value, unit }: Listed): number => toSi(value, unit ?? "1");

function soakOf(input: ModelInput): Outputs {
  const soil = soilRow(wordOf(input, "soil"));
  if (!soil) throw new Error("The soil is not in the tables.");
  const [area, wettedShare] = [numberOf(input, "planted_area"), numberOf(input, "watered_share")];
  const [depth, efficiency] = [numberOf(input, "root_room"), numberOf(input, "efficiency")];
  const held = soil.held.value;
  const watered = area * wettedShare;
  const volume = firstSoakVolume({ area, wettedShare, held, depth, dryness: 1, efficiency });
  const isMulched = wordOf(input, "mulch").startsWith("organic");
  const rate = (isMulched ? soil.intake_rate_covered : undefined) ?? soil.intake_rate;
  const { passes, depthOfPass, wait, time } = soakPasses({
    depth: watered > 0 ? volume / watered : 0,
    mostAtOnce: si(soil.most_at_once),
    intakeRate: si(rate),
  });
  const tried = numberOrNull(input, "soak_tried");
  return {
    ...outcomes({
      first_soak: volume,
      soak_passes: passes,
      soak_pass_volume: depthOfPass * watered,
      soak_wait: wait,
      soak_time: time,
    }),
    soak_reaches:
      tried === null || watered === 0
        ? { none: "no soak tried yet" }
        : { value: wettedDepth((tried * efficiency) / watered, held, 1) },
  };
}

/** First soak in passes. */
export const soak: Model = {
  name: "soak",
  takes: ["soil", "mulch", "planted_area", "watered_share", "root_room", "efficiency", "soak_tried"],
  optional: ["soak_tried"],
  outputs: ["first_soak", "soak_passes", "soak_pass_volume", "soak_wait", "soak_time", "soak_reaches"],
  run: soakOf,
};
