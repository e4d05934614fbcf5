// The coming week as a grower reads it: which bed on which days, how much, by what means. Prints as one clean page.

import { createMemo, For, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { Card } from "../../document/worksheet.ts";
import { shownIn } from "../../graph/readers.ts";
import type { WeekOfBed, WeekSpan } from "../../kinds/season/week.ts";
import { brokenWords, byHandWords, rainsWords } from "../../telling/today.ts";
import { ASSUMED_SOAK, assumedTanks, headline, outlookWords } from "../../telling/week.ts";
import { useGiven } from "../rows/given-of.ts";
import { useSheet } from "../sheet.ts";
import { dateWords } from "../words.ts";
import { PlanOnPaper } from "./PlanOnPaper.tsx";
import { printWhen } from "./paper.ts";
import { useVoice, useWeekSpan } from "./plan-voice.ts";

function useDays() {
  const sheet = useSheet();
  return (date: number | string) => dateWords(date, sheet.showOptions().locale);
}

function BedPlan(props: { readonly card: Card; readonly week: WeekOfBed; readonly span: WeekSpan }) {
  const voice = useVoice();
  const lines = () => props.span.lines.filter(({ bed }) => bed === props.card.id);
  const words = () => headline({ week: props.week, lines: lines(), titleOf: voice().titleOf }, voice().show);
  return (
    <li>
      <h3>{props.card.title}</h3>
      <Show when={words()}>{(said) => <p class="headline">{said()}</p>}</Show>
      <p classList={{ short: props.week.outlook === "some" || props.week.outlook === "none" }}>
        {outlookWords(props.week, voice().show, voice().titleOf)}
      </p>
      <Show when={props.week.assumed && props.week.outlook !== "asks_nothing"}>
        <p class="aside">{ASSUMED_SOAK}</p>
      </Show>
    </li>
  );
}

function useWeekBeds() {
  const sheet = useSheet();
  return createMemo(() =>
    sheet.worksheet().cards.flatMap((card) => {
      const row = sheet.kinds[card.kind]?.views?.week;
      return row === undefined ? [] : [{ card, result: sheet.result(`${card.id}.${row}`) }];
    }),
  );
}

function Today() {
  const sheet = useSheet();
  const today = useGiven("site.today");
  return (
    <p class="today">
      <label>
        From{" "}
        <input
          type="date"
          value={String(today.value() ?? "")}
          onChange={(event) => today.put(event.currentTarget.value || null)}
        />
      </label>
      <button type="button" class="small" onClick={() => sheet.edit.today()}>
        Today
      </button>
    </p>
  );
}

/** The week on a page: its days with boxes to tick, then each bed, and what was taken for granted. */
export function WeekOnPaper(props: { readonly span: WeekSpan }) {
  const sheet = useSheet();
  const beds = useWeekBeds();
  const day = useDays();
  const voice = useVoice();
  const assumed = () => props.span.assumedTanks.map(voice().titleOf);
  return (
    <>
      <p>
        {day(props.span.first)} to {day(props.span.last)}. {rainsWords(props.span.rains, voice())}
      </p>
      <Show when={brokenWords(props.span.broken, voice())}>{(said) => <p>{said()}</p>}</Show>
      <For each={byHandWords(props.span.byHand, voice())}>{(said) => <p>{said}</p>}</For>
      <PlanOnPaper span={props.span} />
      <ul class="plan">
        <For each={beds()}>
          {({ card, result }) => (
            <Show
              when={shownIn(result) as WeekOfBed | null}
              fallback={
                <li>
                  <h3>{card.title}</h3>
                  <p>{sheet.failure(`${card.id}.week`) ?? "It is left out of the plan."}</p>
                </li>
              }
            >
              {(week) => <BedPlan card={card} week={week()} span={props.span} />}
            </Show>
          )}
        </For>
      </ul>
      <Show when={assumed().length > 0}>
        <p class="aside">{assumedTanks(assumed())}</p>
      </Show>
      <p class="aside">Roof water goes on the soil, not on the leaves. Wash what you eat raw.</p>
    </>
  );
}

function Body() {
  const sheet = useSheet();
  const span = useWeekSpan();
  return (
    <>
      <h2>Watering, {sheet.worksheet().title}</h2>
      <Today />
      <Show when={span()} fallback={<p>Say what day it is, and the week is planned from there.</p>}>
        {(held) => <WeekOnPaper span={held()} />}
      </Show>
    </>
  );
}

/** The plan, as a page of its own. */
export function WeekDialog(props: { readonly onClose: () => void }) {
  const sheet = useSheet();
  return (
    <Portal>
      <dialog
        class="week sheet-of-paper"
        aria-label="The week's plan"
        aria-busy={sheet.working()}
        ref={(element) => queueMicrotask(() => element.showModal())}
        onClose={() => props.onClose()}
      >
        <form method="dialog">
          <button type="button" class="tool" onClick={() => void printWhen(() => !sheet.working())}>
            Print the plan
          </button>
          <button type="submit" class="close">
            Close
          </button>
        </form>
        <Body />
      </dialog>
    </Portal>
  );
}
