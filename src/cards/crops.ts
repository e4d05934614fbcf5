// Crop words of the tables, and one line of a bed's contents turned into what the season needs to know of it.

import cropTable from "../../shared/crops.json";
import mulchTable from "../../shared/mulches.json";
import type { CropPart } from "../season/plan.ts";

type Tabled = { readonly value: number };

type CropRow = {
  readonly label: string;
  readonly kc: { readonly initial: Tabled; readonly middle: Tabled; readonly end: Tabled };
  readonly kcb: { readonly initial: Tabled; readonly middle: Tabled; readonly end: Tabled };
  readonly depletion: Tabled;
  readonly height: Tabled;
  readonly yield_response?: Tabled;
  readonly stages: readonly { readonly days: readonly number[] }[];
};

type MulchRow = {
  readonly label: string;
  readonly kind: string;
  readonly kc_initial?: Tabled;
  readonly cut?: Tabled;
  readonly cut_by_crop?: Readonly<Record<string, Tabled>>;
  readonly evaporation_cut_per_cover?: Tabled;
  readonly cover?: Tabled;
};

const CROPS: Readonly<Record<string, CropRow>> = cropTable.crops;
const MULCHES: Readonly<Record<string, MulchRow>> = mulchTable.mulches;

/** Words and labels of every crop in the tables, by label. */
export const CROP_OPTIONS = Object.entries(CROPS)
  .map(([word, row]) => ({ word, label: row.label }))
  .sort((a, b) => (a.label < b.label ? -1 : 1));

/** Words and labels of a table whose rows have labels. */
export function labelled(rows: Readonly<Record<string, { readonly label: string }>>): Record<string, string> {
  return Object.fromEntries(Object.entries(rows).map(([word, row]) => [word, row.label]));
}

export const MULCH_LABELS = labelled(MULCHES);

type Coefficients = { readonly initial: number; readonly middle: number; readonly end: number };

/**
 * Crop coefficients under a mulch (FAO-56 ch. 10): film sets the first and cuts the others by a share; straw and the
 * like cut the evaporation of the ground in proportion to the ground they cover.
 */
function underMulch(crop: string, row: CropRow, mulch: MulchRow): Coefficients {
  const { initial, middle, end } = row.kc;
  if (mulch.kind === "film") {
    const cut = mulch.cut_by_crop?.[crop]?.value ?? mulch.cut?.value ?? 0;
    return {
      initial: Math.min(initial.value, mulch.kc_initial?.value ?? initial.value),
      middle: middle.value * (1 - cut),
      end: end.value * (1 - cut),
    };
  }
  const saved = (mulch.evaporation_cut_per_cover?.value ?? 0) * (mulch.cover?.value ?? 0);
  const less = (single: number, basal: number): number => single - saved * Math.max(0, single - basal);
  return {
    initial: initial.value * (1 - saved),
    middle: less(middle.value, row.kcb.middle.value),
    end: less(end.value, row.kcb.end.value),
  };
}

type Planted = { readonly crop: string; readonly planted: string; readonly share: number };

/** A planted crop as the season sees it, or the reason why it cannot be seen. */
export function cropPart(
  content: Planted,
  mulchWord: string,
  rootStart: number,
  rootEnd: number,
): CropPart | { readonly reason: string } {
  const row = CROPS[content.crop];
  const mulch = MULCHES[mulchWord];
  if (!row) return { reason: `no table has a crop called ${content.crop}` };
  if (!mulch) return { reason: `no table has a mulch called ${mulchWord}` };
  const [initial, development, middle, late] = row.stages[0]?.days ?? [];
  if (initial === undefined || development === undefined || middle === undefined || late === undefined) {
    return { reason: `the lengths of the stages of ${row.label} are not in the tables` };
  }
  const kc = underMulch(content.crop, row, mulch);
  return {
    crop: content.crop,
    planted: content.planted,
    share: content.share,
    kcInitial: kc.initial,
    kcMiddle: kc.middle,
    kcEnd: kc.end,
    stages: [initial, development, middle, late],
    depletion: row.depletion.value,
    rootStart,
    rootEnd,
    height: row.height.value,
    yieldResponse: row.yield_response?.value ?? null,
  };
}

/** Depth of a young plant's roots [m]. */
export const ROOT_START = cropTable.defaults.root_start.value;
