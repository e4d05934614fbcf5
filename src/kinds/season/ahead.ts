// How long it lasts from today: asked as soon as it is known which day it is.

import { recordOf } from "../../graph/readers.ts";
import type { Model } from "../../graph/types.ts";
import { type FromToday, fromToday } from "../../season/from-today.ts";
import type { SeasonInput } from "../../season/input.ts";
import type { WeekGiven } from "../../season/week-plan.ts";

export type LastsFromToday = FromToday;

export const ahead: Model = {
  name: "ahead",
  takes: ["plan", "week_given"],
  record: "weather.record_in_use",
  heavy: true,
  outputs: ["ahead"],
  run: (input) => {
    const plan = input.values["plan"] as SeasonInput;
    const answer = fromToday(plan, recordOf(input), input.values["week_given"] as WeekGiven);
    return { ahead: "failed" in answer ? { failed: answer.failed } : { value: answer } };
  },
};
