// Water all, hold back or give up, as the command line gives it: in JSON, and in a sentence with its reason.

import { valueIn } from "../graph/readers.ts";
import type { Advice, Choice, NoAdvice } from "../season/advice.ts";
import type { SeasonFailure } from "../season/answer.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import type { Whole } from "../studies/work-out.ts";
import { adviceTold } from "../telling/advice.ts";
import { isoDate } from "../units/calendar.ts";
import { voiceOf } from "./today-lines.ts";

export type AdviceAnswer = Advice | NoAdvice | SeasonFailure;

type ChoiceReport = Pick<Choice, "choice" | "beds" | "loss" | "left"> & {
  readonly loss_if_dry: number | null;
  readonly per_bed: readonly {
    readonly bed: string;
    readonly loss: number;
    readonly short_days: number;
    readonly from: string | null;
  }[];
};

export type AdviceReport =
  | NoAdvice
  | { readonly kind: "failed"; readonly reason: string }
  | (Pick<Advice, "kind" | "asking" | "advised" | "tie" | "years"> & {
      readonly choices: readonly ChoiceReport[];
    });

const isAdvice = (answer: AdviceAnswer): answer is Advice => "choices" in answer;

function choiceReport({ choice, beds, loss, lossIfDry, perBed, left }: Choice): ChoiceReport {
  return {
    choice,
    beds,
    loss,
    loss_if_dry: lossIfDry,
    per_bed: perBed.map((one) => ({
      bed: one.bed,
      loss: one.loss,
      short_days: one.shortDays,
      from: one.from === null ? null : isoDate(one.from),
    })),
    left,
  };
}

/** The advice in JSON. */
export function adviceReport(answer: AdviceAnswer): AdviceReport {
  if ("failed" in answer) return { kind: "failed", reason: answer.failed };
  if (!isAdvice(answer)) return answer;
  const { kind, asking, advised, tie, choices, years } = answer;
  return { kind, asking, advised, tie, choices: choices.map(choiceReport), years };
}

/** The advice as it is read, with an empty line after it; nothing where there is none to give. */
export function adviceText(whole: Whole, answer: AdviceAnswer): readonly string[] {
  if ("failed" in answer) return [`No advice: ${answer.failed}`, ""];
  if (!isAdvice(answer)) return [];
  const { titleOf, show } = voiceOf(whole);
  const given = valueIn(whole.results.get("season.week_given")) as WeekGiven | null;
  const told = adviceTold(answer, titleOf, show, Object.keys(given?.forecast ?? {}).length > 0);
  const { what, rest } = told.lead;
  const said = [`${what} ${rest}`.trim(), told.reason].filter((words) => words !== "");
  return [said.join(" "), told.rests, ""];
}
