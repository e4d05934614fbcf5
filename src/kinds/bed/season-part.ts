// From a bed's rows to the part of the season's plan that stands for it.

import {
  type CardResults,
  causeOf,
  firstMissing,
  type Missing,
  readyList,
  readyNumber,
  readyWord,
} from "../../graph/readers.ts";
import type { BedPart, BedRule, CropPart, GroundWetting, LetGo } from "../../season/input.ts";
import { cropPart, dryingLeft, type Planted, ROOT_START } from "./crops.ts";
import { BED_ROWS } from "./rows.ts";
import { evaporableOf, isCoarse, soilRow } from "./soak.ts";

type Results = CardResults;

/** Of these there may be none; one that is wrong still leaves the bed out. */
const OPTIONAL = ["watered_by", "let_go_from"];

const NEEDED = BED_ROWS.filter((name) => !OPTIONAL.includes(name));

const isWrong = (results: Results) => (name: string) => causeOf(results[name]) !== null;

function cropsOf(results: Results): readonly CropPart[] | Missing {
  const parts: CropPart[] = [];
  const end = readyNumber(results, "root_room");
  const roots = { start: Math.min(ROOT_START, end), end };
  for (const content of readyList(results, "contents")) {
    const part = cropPart(content as Planted, readyWord(results, "mulch"), roots);
    if ("reason" in part) return part;
    parts.push(part);
  }
  return parts;
}

const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

/** Days 1 Monday to 7 Sunday of a text such as "tue fri"; null where a word is no day, or there is none. */
function daysOfWeek(text: string): readonly number[] | null {
  const words = text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== "");
  const days = words.map((word) => WEEKDAYS.indexOf(word.slice(0, 3)) + 1);
  return days.length > 0 && !days.includes(0) ? [...new Set(days)].sort((a, b) => a - b) : null;
}

function ruleOf(results: Results): BedRule | Missing {
  const rule = readyWord(results, "rule");
  const volume = readyNumber(results, "fixed_volume");
  if (rule === "fixed") return { kind: "fixed", volume, every: readyNumber(results, "fixed_every") };
  if (rule !== "weekdays") return { kind: "soil" };
  const days = daysOfWeek(readyWord(results, "weekdays"));
  if (!days) return { reason: "no day of the week is picked on which it is watered" };
  return { kind: "weekdays", days, volume: readyWord(results, "weekday_amount") === "fixed" ? volume : null };
}

/** Set only where the user says how often; under a film the ground stays dry on top whatever is poured. */
function groundWettingOf(results: Results): GroundWetting | null {
  const left = dryingLeft(readyWord(results, "mulch"));
  if (readyWord(results, "ground_wetting") !== "given" || left === null) return null;
  return {
    every: readyNumber(results, "wetted_every"),
    depth: readyNumber(results, "wetted_depth"),
    coarse: isCoarse(readyWord(results, "soil")),
    left,
  };
}

function letGoOf(results: Results): LetGo | null {
  const from = readyWord(results, "let_go_from");
  return from === "" ? null : { from, dryDays: readyNumber(results, "let_go_dry_days") };
}

/** The bed as the season sees it, or the reason why it cannot be seen. */
export function bedPart(id: string, results: Results): BedPart | Missing {
  const missing = firstMissing(results, [...NEEDED, ...OPTIONAL.filter(isWrong(results))]);
  if (missing) return missing;
  const crops = cropsOf(results);
  if ("reason" in crops) return crops;
  const rule = ruleOf(results);
  if ("reason" in rule) return rule;
  const soil = soilRow(readyWord(results, "soil"));
  if (!soil) return { reason: "its soil is not in the tables" };
  // Leaves over a pot shed the rain past it.
  const covered = readyWord(results, "cover") === "covered" || readyWord(results, "grown_in") === "pots";
  return {
    id,
    area: readyNumber(results, "planted_area"),
    wettedShare: readyNumber(results, "watered_share"),
    crops,
    canopyShare: readyNumber(results, "canopy_share"),
    availableWater: soil.held.value,
    evaporable: evaporableOf(soil),
    bareLeft: dryingLeft(readyWord(results, "mulch")) ?? 0,
    rootLimit: readyNumber(results, "root_room"),
    covered,
    coverFactor: readyNumber(results, "drying_there"),
    mulchFactor: 1,
    efficiency: readyNumber(results, "efficiency"),
    wateredBy: readyList(results, "watered_by").filter((item): item is string => typeof item === "string"),
    priority: readyNumber(results, "priority"),
    rule,
    decidesOn: readyWord(results, "decides_on") === "morning" ? "morning" : "evening",
    mingled: readyWord(results, "mingled") === "yes",
    youngDays: readyNumber(results, "young_days"),
    groundWetting: groundWettingOf(results),
    airCorrects: readyWord(results, "air_corrects") === "yes",
    letGo: letGoOf(results),
    worth: readyNumber(results, "worth_weight"),
  };
}
