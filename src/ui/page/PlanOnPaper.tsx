// The week's lines as paper has them: a box to tick before each, what is waited for, and what was taken for granted.

import { For, Show } from "solid-js";
import type { WeekSpan } from "../../kinds/season/week.ts";
import { daysOf, openTitle, openWords, type ToldDay, type ToldRow, type Voice } from "../../telling/today.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { clockText } from "../../units/clock.ts";
import { dateWords } from "../words.ts";
import { useVoice } from "./plan-voice.ts";

const Box = () => <i aria-hidden="true" />;

function Row(props: { readonly row: ToldRow; readonly voice: Voice }) {
  const { row } = props;
  if (row.kind !== "go") return <li class="wait">{row.said}</li>;
  return (
    <li>
      <Box /> {clockText(row.at, props.voice.locale)} <b>{props.voice.titleOf(row.timed.line.bed)}</b>,{" "}
      {row.amount}: {row.said}
    </li>
  );
}

function Day(props: { readonly day: ToldDay; readonly opens: WeekSpan["opens"]; readonly voice: Voice }) {
  return (
    <section>
      <h3>
        {dateWords(props.day.day, props.voice.locale)} <small>{props.day.said}</small>
      </h3>
      <ul class="boxes">
        <For each={props.opens}>
          {(one) => (
            <li>
              <Box /> <b>{openTitle(one.line, props.voice)}</b>: {openWords(one, props.voice)}
            </li>
          )}
        </For>
        <For each={props.day.rows}>{(row) => <Row row={row} voice={props.voice} />}</For>
      </ul>
    </section>
  );
}

/** Every day of the week with its lines. */
export function PlanOnPaper(props: { readonly span: WeekSpan }) {
  const voice = useVoice();
  const [first, last] = [() => parseIsoDate(props.span.first) ?? 0, () => parseIsoDate(props.span.last) ?? 0];
  return (
    <Show when={props.span.lines.length + props.span.refused.length + props.span.spared.length > 0}>
      <div class="days">
        <For each={daysOf(props.span, first(), last(), voice())}>
          {(day) => <Day day={day} opens={day.day === first() ? props.span.opens : []} voice={voice()} />}
        </For>
      </div>
    </Show>
  );
}
