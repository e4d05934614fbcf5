// From a bed's rows to the part of the season's plan that stands for it.

import soilTable from "../../shared/soils.json";
import type { Outcome, Result } from "../graph/types.ts";
import type { BedPart, CropPart } from "../season/plan.ts";
import { cropPart, ROOT_START } from "./crops.ts";
import { causeOf } from "./inputs.ts";

const SOILS: Readonly<Record<string, { readonly label: string; readonly held: { readonly value: number } }>> =
  soilTable.soils;

type Results = Readonly<Record<string, Result>>;

/** The first thing that is missing, in words; null where all rows are ready. */
export function firstMissing(results: Results, names: readonly string[]): Missing | null {
  const name = names.find((candidate) => results[candidate]?.state !== "ready");
  if (name === undefined) return null;
  const result = results[name];
  if (result?.state === "none") return { reason: result.reason };
  if (result?.state !== "failed") return { reason: `${name.replaceAll("_", " ")} is not known` };
  return { reason: result.problem.text, cause: causeOf(result) ?? result.problem.at };
}

/** Why a part cannot be made, and the quantity at which the trouble began, where one is to blame. */
export type Missing = { readonly reason: string; readonly cause?: string };

/** The same as what a model says of its outputs. */
export function failedBy({ reason, cause }: Missing): Outcome {
  return cause === undefined ? { failed: reason } : { failed: reason, cause };
}

/** A ready number. */
export function readyNumber(results: Results, name: string): number {
  const result = results[name];
  if (result?.state !== "ready" || typeof result.value !== "number")
    throw new Error(`${name} is not a number.`);
  return result.value;
}

/** A ready word, or "" where there is none. */
export function readyWord(results: Results, name: string): string {
  const result = results[name];
  return result?.state === "ready" && typeof result.value === "string" ? result.value : "";
}

/** A ready list, or an empty one. */
export function readyList(results: Results, name: string): readonly unknown[] {
  const result = results[name];
  return result?.state === "ready" && Array.isArray(result.value) ? result.value : [];
}

const NEEDED = [
  "area",
  "watered_share",
  "contents",
  "soil",
  "root_depth",
  "cover",
  "cover_factor",
  "mulch",
  "efficiency",
  "priority",
  "rule",
];

function cropsOf(results: Results): readonly CropPart[] | { readonly reason: string } {
  const parts: CropPart[] = [];
  const rootEnd = readyNumber(results, "root_depth");
  const rootStart = Math.min(ROOT_START, rootEnd);
  for (const content of readyList(results, "contents")) {
    const planted = content as { readonly crop: string; readonly planted: string; readonly share: number };
    const part = cropPart(planted, readyWord(results, "mulch"), rootStart, rootEnd);
    if ("reason" in part) return part;
    parts.push(part);
  }
  return parts;
}

/** The bed as the season sees it, or the reason why it cannot be seen. */
export function bedPart(id: string, results: Results): BedPart | Missing {
  const missing = firstMissing(results, NEEDED);
  if (missing) return missing;
  const crops = cropsOf(results);
  if ("reason" in crops) return crops;
  const soil = SOILS[readyWord(results, "soil")];
  if (!soil) return { reason: "its soil is not in the tables" };
  const fixed = readyWord(results, "rule") === "fixed";
  return {
    id,
    area: readyNumber(results, "area"),
    wettedShare: readyNumber(results, "watered_share"),
    crops,
    availableWater: soil.held.value,
    rootLimit: readyNumber(results, "root_depth"),
    covered: readyWord(results, "cover") === "covered",
    coverFactor: readyNumber(results, "cover_factor"),
    mulchFactor: 1,
    efficiency: readyNumber(results, "efficiency"),
    wateredBy: readyList(results, "watered_by").filter((item): item is string => typeof item === "string"),
    priority: readyNumber(results, "priority"),
    rule: fixed
      ? {
          kind: "fixed",
          volume: readyNumber(results, "fixed_volume"),
          every: readyNumber(results, "fixed_every"),
        }
      : { kind: "soil" },
    decidesOn: "evening",
    mingled: false,
    youngDays: 0,
    groundWetting: null,
    airCorrects: false,
    letGo: null,
  };
}
