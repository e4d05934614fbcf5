// Crop words of the tables, and one line of a bed's contents turned into what the season needs to know of it.

import cropTable from "../../../shared/crops.json";
import mulchTable from "../../../shared/mulches.json";
import { type CropCurve, stretchedStages } from "../../physics/crop-coefficient.ts";
import { filmedCurve, mulchedCurve } from "../../physics/mulch.ts";
import type { CropPart } from "../../season/input.ts";
import { dayInYear } from "../../units/calendar.ts";

/** One line of a bed's contents. */
export type Planted = {
  readonly crop: string;
  readonly planted: string;
  readonly share: number;
  /** Day of the last picking, where the tables' length of life is not this garden's. */
  readonly until?: string;
  readonly trained?: boolean;
};

type Tabled = { readonly value: number };

type CropRow = {
  readonly label: string;
  readonly kc: {
    readonly initial: Tabled;
    readonly middle: Tabled;
    readonly end: Tabled;
    readonly middle_trellised?: Tabled;
  };
  readonly kcb: { readonly initial: Tabled; readonly middle: Tabled; readonly end: Tabled };
  readonly depletion: Tabled;
  readonly height: Tabled;
  readonly yield_response?: Tabled;
  /** What the values are taken from, where no table has the crop or its stages. */
  readonly analogy?: string;
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

/** A year without a 29th of February, by which the days of a life are counted. */
const SOME_YEAR = 2001;
const LEAST_LIFE = 4;

/** Words and labels of every crop in the tables, by label; whether the tables have it trained up a trellis. */
export const CROP_OPTIONS = Object.entries(CROPS)
  .map(([word, row]) => ({
    word,
    label: row.label,
    ...(row.kc.middle_trellised ? { trains: true as const } : {}),
    ...(row.analogy === undefined ? {} : { note: row.analogy }),
  }))
  .sort((a, b) => (a.label < b.label ? -1 : 1));

/** Words and labels of a table whose rows have labels. */
export function labelled(rows: Readonly<Record<string, { readonly label: string }>>): Record<string, string> {
  return Object.fromEntries(Object.entries(rows).map(([word, row]) => [word, row.label]));
}

export const MULCH_LABELS = labelled(MULCHES);

/** Depth of a young plant's roots [m]. */
export const ROOT_START = cropTable.defaults.root_start.value;

/** What a crop is called. */
export const cropLabel = (word: string): string => CROPS[word]?.label ?? word;

/** What a crop's values are taken from where no table has it; null where one has. */
export const cropAnalogy = (word: string): string | null => CROPS[word]?.analogy ?? null;

/** Share of the bare ground's drying that a mulch leaves; null under a film, which keeps the ground dry on top. */
export function dryingLeft(mulchWord: string): number | null {
  const mulch = MULCHES[mulchWord];
  if (mulch?.kind === "film") return null;
  return 1 - (mulch?.evaporation_cut_per_cover?.value ?? 0) * (mulch?.cover?.value ?? 0);
}

/**
 * Coefficients of the bare bed. A trellis raises the middle one; what the ground adds to the plant's own stays the same,
 * since no table has a basal coefficient for it.
 */
function bareCurve(row: CropRow, trained: boolean, stages: CropCurve["stages"]) {
  const middle = (trained ? row.kc.middle_trellised?.value : undefined) ?? row.kc.middle.value;
  const curve = { kcInitial: row.kc.initial.value, kcMiddle: middle, kcEnd: row.kc.end.value, stages };
  const raised = middle - row.kc.middle.value;
  const basal = {
    initial: row.kcb.initial.value,
    middle: row.kcb.middle.value + raised,
    end: row.kcb.end.value,
  };
  return { curve, basal };
}

function underMulch(
  crop: string,
  mulch: MulchRow,
  { curve, basal }: ReturnType<typeof bareCurve>,
): CropCurve {
  if (mulch.kind === "none") return curve;
  if (mulch.kind === "film") {
    const cut = mulch.cut_by_crop?.[crop]?.value ?? mulch.cut?.value ?? 0;
    return filmedCurve(curve, cut, mulch.kc_initial?.value ?? curve.kcInitial);
  }
  return mulchedCurve(curve, basal, mulch.cover?.value ?? 0, mulch.evaporation_cut_per_cover?.value ?? 0);
}

/** Days from planting to the last picking, both counted; it may come in the next year. Null where a text is no date. */
function lifeOf(planted: string, until: string): number | null {
  const [first, last] = [dayInYear(planted, SOME_YEAR), dayInYear(until, SOME_YEAR)];
  if (first === null || last === null) return null;
  const end = last >= first ? last : (dayInYear(until, SOME_YEAR + 1) ?? last);
  return end - first + 1;
}

type Reason = { readonly reason: string };

/** Days of the stages: as listed, or stretched to the user's own last picking. */
function stagesOf(content: Planted, row: CropRow): CropCurve["stages"] | Reason {
  const [initial, development, middle, late] = row.stages[0]?.days ?? [];
  if (initial === undefined || development === undefined || middle === undefined || late === undefined) {
    return { reason: `the lengths of the stages of ${row.label} are not in the tables` };
  }
  const listed = [initial, development, middle, late] as const;
  if (content.until === undefined) return listed;
  const life = lifeOf(content.planted, content.until);
  if (life === null || life < LEAST_LIFE) {
    return { reason: `${row.label} would be picked for the last time too soon after planting` };
  }
  return stretchedStages(listed, life);
}

/** Depths of a young plant's roots and of grown ones in this bed [m]. */
export type Roots = { readonly start: number; readonly end: number };

/** A planted crop as the season sees it, or the reason why it cannot be seen. */
export function cropPart(content: Planted, mulchWord: string, roots: Roots): CropPart | Reason {
  const row = CROPS[content.crop];
  const mulch = MULCHES[mulchWord];
  if (!row) return { reason: `no table has a crop called ${content.crop}` };
  if (!mulch) return { reason: `no table has a mulch called ${mulchWord}` };
  const stages = stagesOf(content, row);
  if ("reason" in stages) return stages;
  const bare = bareCurve(row, content.trained === true, stages);
  const { kcInitial, kcMiddle, kcEnd } = underMulch(content.crop, mulch, bare);
  return {
    crop: content.crop,
    planted: content.planted,
    share: content.share,
    kcInitial,
    kcMiddle,
    kcEnd,
    kcbInitial: bare.basal.initial,
    kcbMiddle: bare.basal.middle,
    kcbEnd: bare.basal.end,
    stages,
    depletion: row.depletion.value,
    rootStart: roots.start,
    rootEnd: roots.end,
    height: row.height.value,
    yieldResponse: row.yield_response?.value ?? null,
  };
}
