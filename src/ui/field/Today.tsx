// Today and the week: a row for each go, pressed once it is done; what is pressed is a note of today and stays.

import { createMemo, For, type JSX, Show } from "solid-js";
import { inForce } from "../../document/note-order.ts";
import type { Note } from "../../document/worksheet.ts";
import type { WeekSpan } from "../../kinds/season/week.ts";
import {
  brokenWords,
  byHandWords,
  daysOf,
  gaveWords,
  leadAfter,
  leadOf,
  NO_BED_LEFT,
  openedWords,
  openTitle,
  openWords,
  rainsWords,
  type ToldRow,
  type Voice,
  wasOnDay,
} from "../../telling/today.ts";
import { isoDate, parseIsoDate } from "../../units/calendar.ts";
import { clockText } from "../../units/clock.ts";
import { MINUTE } from "../../units/constants.ts";
import { unitFor } from "../../units/show.ts";
import { fromSi, toSi } from "../../units/unit.ts";
import { printWhen } from "../page/paper.ts";
import { useVoice, useWeekSpan } from "../page/plan-voice.ts";
import { WeekOnPaper } from "../page/WeekPlan.tsx";
import { useSheet } from "../sheet.ts";
import { shortDateWords } from "../words.ts";
import { Missing } from "./Missing.tsx";
import { FieldFoot, useNoting } from "./noting-here.tsx";
import { useOutOfSeason } from "./out-of-season.ts";
import type { FieldPageProps } from "./pages.ts";
import { Uncounted } from "./Uncounted.tsx";
import "./today.css";

type GoRow = Extract<ToldRow, { readonly kind: "go" }>;

type Pressed = {
  readonly done: boolean;
  readonly at: string;
  readonly title: string;
  readonly amount?: string;
  /** What it was before the last note; "" where it stayed. */
  readonly was?: string;
  readonly said: string;
  readonly onPress: () => void;
};

/** A row that is pressed as a whole. */
function Row(props: Pressed) {
  return (
    <li class="today-line">
      <button
        type="button"
        class="today-row"
        aria-pressed={props.done}
        classList={{ done: props.done }}
        onClick={() => props.onPress()}
      >
        <span class="at">{props.at}</span>
        <span class="what">
          <b>
            {props.title}{" "}
            <Show when={props.amount}>{(amount) => <span class="amount">{amount()}</span>}</Show>
            <Show when={props.was}>{(was) => <small> was {was()}</small>}</Show>
          </b>
          <span class="how">{props.said}</span>
        </span>
        <span class="box" aria-hidden="true">
          {props.done ? "✓" : ""}
        </span>
      </button>
    </li>
  );
}

/** What was done today, by its notes. */
function useDone(today: () => string | undefined) {
  const sheet = useSheet();
  return createMemo(() =>
    inForce(sheet.worksheet().notes ?? []).filter(
      ({ day, what }) => day === today() && (what === "gave" || what === "opened"),
    ),
  );
}

/** A note of today; pressed, it comes back into the foot, to be taken back there. */
function Done(props: { readonly note: Note; readonly voice: Voice }) {
  const { recall } = useNoting();
  const title = () => props.voice.titleOf(props.note.where);
  const isGiven = () => props.note.what === "gave";
  const amount = () =>
    isGiven() ? props.voice.show(toSi(props.note.value ?? 0, props.note.unit ?? "gal"), "volume") : "";
  const at = () =>
    props.note.minute === undefined ? "" : clockText(props.note.minute * MINUTE, props.voice.locale);
  return (
    <Row
      done
      at={at()}
      title={isGiven() ? title() : openTitle(props.note.where, props.voice)}
      amount={amount()}
      said={props.note.by ? props.voice.titleOf(props.note.by) : "done"}
      onPress={() => {
        const { id, day: _day, minute: _minute, ...said } = props.note;
        recall(id, { said, words: isGiven() ? gaveWords(title(), amount()) : openedWords(title()) });
      }}
    />
  );
}

/** Figures of an amount as it is read aloud and written down. */
const AS_READ = 2;

/** What a row writes: the water as it was read, in the sheet's own unit. */
function useGiving(voice: () => Voice) {
  const sheet = useSheet();
  const { note } = useNoting();
  return ({ timed: { line, go } }: GoRow): void => {
    const unit = unitFor("volume", sheet.showOptions().units);
    const amount = voice().show(go.volume, "volume");
    note({
      said: {
        what: "gave",
        where: line.bed,
        value: Number(fromSi(go.volume, unit).toPrecision(AS_READ)),
        unit,
        by: go.by,
      },
      words: gaveWords(voice().titleOf(line.bed), amount),
    });
  };
}

function Rows(props: { readonly span: WeekSpan; readonly rows: readonly ToldRow[]; readonly voice: Voice }) {
  const give = useGiving(() => props.voice);
  const { weekBefore } = useNoting();
  const was = (bed: string, day: number): string =>
    wasOnDay(weekBefore(props.span.first), props.span, bed, day, props.voice.show);
  // Of several goes the first tells what the day was.
  const wasOf = ({ timed: { line, go } }: GoRow) => (line.goes[0] === go ? was(line.bed, line.day) : "");
  const row = (told: ToldRow): JSX.Element =>
    told.kind === "go" ? (
      <Row
        done={false}
        at={clockText(told.at, props.voice.locale)}
        title={props.voice.titleOf(told.timed.line.bed)}
        amount={told.amount}
        was={wasOf(told)}
        said={told.said}
        onPress={() => give(told)}
      />
    ) : (
      <li class="today-wait">
        <span>
          {told.said}
          <Show when={told.kind === "none" && was(told.bed, told.day)}>
            {(before) => <small> was {before()}</small>}
          </Show>
        </span>
      </li>
    );
  return <For each={props.rows}>{row}</For>;
}

function Opens(props: { readonly span: WeekSpan; readonly done: readonly Note[]; readonly voice: Voice }) {
  const { note } = useNoting();
  const left = () =>
    props.span.opens.filter(
      ({ line }) => !props.done.some(({ what, where }) => what === "opened" && where === line),
    );
  return (
    <For each={left()}>
      {(one) => (
        <Row
          done={false}
          at="now"
          title={openTitle(one.line, props.voice)}
          said={openWords(one, props.voice)}
          onPress={() =>
            note({
              said: { what: "opened", where: one.line },
              words: openedWords(props.voice.titleOf(one.line)),
            })
          }
        />
      )}
    </For>
  );
}

function Week(props: { readonly span: WeekSpan; readonly voice: Voice }) {
  const sheet = useSheet();
  const done = useDone(() => props.span.first);
  const outside = useOutOfSeason();
  const lead = () => (done().length > 0 ? leadAfter : leadOf)(props.span, days()[0], props.voice);
  const days = () =>
    [props.span.first, props.span.last].map((day) => parseIsoDate(day) ?? 0) as [number, number];
  // Past the hour of watering what is left of today is begun now.
  const now = () => (props.span.first === sheet.today() ? sheet.timeOfDay() : 0);
  return (
    <>
      <p class="today-lead" aria-live="polite" classList={{ working: sheet.working() }}>
        {Object.keys(props.span.drivers).length === 0 ? NO_BED_LEFT : outside() || lead()}
      </p>
      <Show when={brokenWords(props.span.broken, props.voice)}>
        {(said) => <p class="aside">{said()}</p>}
      </Show>
      <Show when={props.span.lines.length + props.span.rains.length > 0}>
        <p class="aside">{rainsWords(props.span.rains, props.voice)} Planned as the sheet waters.</p>
      </Show>
      <For each={byHandWords(props.span.byHand, props.voice)}>{(said) => <p class="aside">{said}</p>}</For>
      <For each={daysOf(props.span, ...days(), props.voice, now())}>
        {(day) => (
          <section>
            <h3 class="today-day">
              {shortDateWords(isoDate(day.day), sheet.showOptions().locale)} <span>{day.said}</span>
            </h3>
            <ul>
              <Show when={day.day === days()[0]}>
                <For each={done()}>{(note) => <Done note={note} voice={props.voice} />}</For>
                <Opens span={props.span} done={done()} voice={props.voice} />
              </Show>
              <Rows span={props.span} rows={day.rows} voice={props.voice} />
            </ul>
          </section>
        )}
      </For>
    </>
  );
}

/** The same on paper, on a page of its own. */
function Paper(props: { readonly span: WeekSpan }) {
  const sheet = useSheet();
  return (
    <div class="today-paper week">
      <h2>Watering, {sheet.worksheet().title}</h2>
      <WeekOnPaper span={props.span} />
    </div>
  );
}

export function Today(props: FieldPageProps) {
  const sheet = useSheet();
  const outside = useOutOfSeason();
  const span = useWeekSpan();
  const voice = useVoice();
  return (
    <>
      <div class="field-body">
        <Uncounted />
        <Show
          when={span()}
          fallback={
            <Show when={!sheet.working()} fallback={<p class="today-lead working">Working it out …</p>}>
              <Missing
                {...props}
                undone={outside() || "Dip a tank or note a soak, and it is told what to water today."}
              />
            </Show>
          }
        >
          {(held) => (
            <>
              <Week span={held()} voice={voice()} />
              <p class="today-acts">
                <button type="button" onClick={() => void printWhen(() => !sheet.working())}>
                  Print the week
                </button>
              </p>
              <Paper span={held()} />
            </>
          )}
        </Show>
      </div>
      <FieldFoot />
    </>
  );
}
