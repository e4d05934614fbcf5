// `--gives-out`: which limit costs the most short days.

import type { Worksheet } from "../document/worksheet.ts";
import { wordIn } from "../graph/readers.ts";
import type { CardKinds } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { GivesOut } from "../season/relief.ts";
import { baseOf } from "../studies/ask.ts";
import { givesOut } from "../studies/gives-out.ts";
import type { Whole } from "../studies/work-out.ts";
import { givesOutSaid } from "../telling/gives-out.ts";
import { asDriver } from "../telling/words/bounds.ts";

export type GivesOutReport = {
  /** Short days saved are those of a season on the mean, as `season.days_short` is; `in_all` those of all seasons together. */
  readonly gives_out: readonly {
    readonly bounds: readonly string[];
    readonly short_days_saved: number;
    readonly in_all: number;
  }[];
  /** `first`, `pair`, `several`, `never`, or why it cannot be said. */
  readonly gives_out_state: string;
  /** Share of the rain under which it was found: 1, or less where no day is short. */
  readonly gives_out_rain: number;
  readonly gives_out_said: string;
};

function reliefs(answer: GivesOut): GivesOutReport["gives_out"] {
  if (answer.state !== "first" && answer.state !== "pair") return [];
  const { seasons } = answer.short;
  return answer.first.map(({ bounds, saved }) => ({
    bounds,
    short_days_saved: saved / seasons,
    in_all: saved,
  }));
}

export function givesOutReport(
  worksheet: Worksheet,
  kinds: CardKinds,
  records: readonly DailyRecord[],
  whole: Whole,
): GivesOutReport {
  const answer = givesOut(baseOf(worksheet, kinds, records));
  if ("failed" in answer) {
    const said = `What gives out first cannot be said: ${answer.failed.replace(/\.$/, "")}.`;
    return { gives_out: [], gives_out_state: answer.failed, gives_out_rain: 1, gives_out_said: said };
  }
  const driver = asDriver(wordIn(whole.results.get("season.binding_driver")));
  return {
    gives_out: reliefs(answer),
    gives_out_state: answer.state,
    gives_out_rain: answer.state === "never" ? 0.5 : answer.rain,
    gives_out_said: givesOutSaid(answer, driver),
  };
}
