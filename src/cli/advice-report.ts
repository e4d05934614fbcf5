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
  | (Pick<Advice, "kind" | "asking" | "held" | "advised" | "tie" | "years"> & {
      /** First short day as the sheet waters, as in short_from: the choices' days hold for the choice and the tuned rule after it. */
      readonly as_the_sheet: { readonly short_from: string | null };
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
  const { kind, asking, held, advised, tie, choices, years, asSheet } = answer;
  return {
    kind,
    asking,
    held,
    advised,
    tie,
    choices: choices.map(choiceReport),
    years,
    // As everywhere: what comes on the season's last day does not come before its end.
    as_the_sheet: { short_from: asSheet === null || asSheet >= answer.last ? null : isoDate(asSheet) },
  };
}

/** The advice as it is read, with an empty line after it; nothing where there is none to give. */
export function adviceText(whole: Whole, answer: AdviceAnswer): readonly string[] {
  if ("failed" in answer) return [`No advice: ${answer.failed}`, ""];
  if (!isAdvice(answer)) return [];
  const { titleOf, show } = voiceOf(whole);
  const given = valueIn(whole.results.get("season.week_given")) as WeekGiven | null;
  const told = adviceTold(answer, titleOf, show, Object.keys(given?.forecast ?? {}).length > 0);
  const { what, rest } = told.lead;
  const said = [`${what} ${rest}`.trim(), told.noted, told.reason].filter((words) => words !== "");
  const { here, asSheet } = told.rule;
  const rule = `These days hold for ${here} As the sheet waters, ${asSheet}.`;
  return [said.join(" "), told.asAdvised, rule, told.rests, ""];
}
