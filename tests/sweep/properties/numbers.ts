// What holds of numbers whatever they mean: finite or explained, accounted for, the same in any order of the cards.

import { cautionsOf } from "../../../src/graph/cautions.ts";
import { explain } from "../../../src/graph/explain.ts";
import { notFinite, sameResult } from "../../../src/graph/same.ts";
import type { Result } from "../../../src/graph/types.ts";
import { KIND_WORDS } from "../../../src/kinds/words.ts";
import { isLong } from "../../tries.ts";
import { dice } from "../dice.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked, workedOut } from "../worked.ts";

/** What is wrong with a result by itself: neither a finite value nor a reason. */
function wrongWith(result: Result): string | null {
  if (result.state === "ready") return notFinite(result.value) ? "is not finite" : null;
  if (result.state === "none") return result.reason.trim() === "" ? "is none for no reason" : null;
  if (result.state === "failed") return result.problem.text.trim() === "" ? "failed for no reason" : null;
  return "is still pending";
}

property("[G5] every result is finite or says why there is none", ({ results }) => {
  for (const id of results.ids) {
    const result = results.get(id);
    const wrong = result ? wrongWith(result) : "has no result";
    if (wrong !== null) return `${id} ${wrong}`;
  }
  return null;
});

const balance = (id: string) => (worked: Worked) => {
  const error = worked.number(id);
  return error !== null && Math.abs(error) > 1e-9 ? `${id} is ${error}` : null;
};

property("water in is water out and water kept, to 1e-9", balance("season.balance_error"));
property("energy in is energy out and energy kept, to 1e-9", balance("season.energy_error"));

property(
  "[G11] the order of the cards changes no result, to the last bit",
  (worked) => {
    const cards = dice(worked.seed).shuffled(worked.worksheet.cards);
    const other = workedOut({ ...worked, worksheet: { ...worked.worksheet, cards } });
    if (other.results.ids.length !== worked.results.ids.length) return "other quantities";
    for (const id of worked.results.ids) {
      const [a, b] = [worked.results.get(id), other.results.get(id)];
      if (!a || !b || !sameResult(a, b))
        return `${id}: ${JSON.stringify(a)?.slice(0, 300)} became ${JSON.stringify(b)?.slice(0, 300)}`;
    }
    return null;
  },
  { every: isLong ? 10 : 20 },
);

/** Of so many quantities of each place the working is told, others in every place. */
const TOLD = isLong ? 20 : 40;

property(
  "every working and caution can be told, in words without a hole",
  ({ graph, worksheet, results, seed }) => {
    for (const { id, text } of cautionsOf(graph, worksheet, results, OPTIONS, KIND_WORDS))
      if (/undefined|NaN|Infinity|\[object/.test(text)) return `${id}: ${text}`;
    for (const id of results.ids.filter((_, at) => at % TOLD === seed % TOLD)) {
      const { words, numbers } = explain(graph, worksheet, results, id, OPTIONS, KIND_WORDS);
      if (/undefined|NaN|Infinity|\[object/.test(`${words} ${numbers}`)) return `${id}: ${words} ${numbers}`;
    }
    return null;
  },
);
