// The coming week as a grower reads it: which bed on which days, how much, by what means. Prints as one clean page.

import { createMemo, createSignal, For, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { Card } from "../../document/worksheet.ts";
import { boundWords } from "../../kinds/bound-words.ts";
import type { WeekOfBed, WeekSpan } from "../../kinds/season/week.ts";
import type { MeasureName } from "../../units/measures.ts";
import { showQuantity } from "../../units/show.ts";
import { useGiven } from "../rows/given-of.ts";
import { useSheet } from "../sheet.ts";
import { dateWords, listed, perhapsListed } from "../words.ts";

type Watering = WeekOfBed["waterings"][number];
type Way = WeekOfBed["ways"][number];

function useShow() {
  const sheet = useSheet();
  // As a gardener would say it aloud.
  return (si: number, measure: MeasureName) =>
    showQuantity(si, measure, { ...sheet.showOptions(), figures: 2 });
}

/** "9 cans in 5 trips, 12 min" or "4 min with the pump". */
function useWayWords() {
  const sheet = useSheet();
  const show = useShow();
  return (way: Way): string => {
    const title = sheet.worksheet().cards.find(({ id }) => id === way.id)?.title ?? way.id;
    if (way.time === null) return `${title} cannot give so much`;
    const time = show(way.time, "duration");
    return way.trips > 0
      ? `${show(way.cans, "count")} cans in ${show(way.trips, "count")} trips, ${time}`
      : `${time} with ${title}`;
  };
}

function Outlook(props: { readonly week: WeekOfBed }) {
  const show = useShow();
  const words = () => {
    const { outlook, asked, given, bound } = props.week;
    if (outlook === "all") return "There is enough for all of it.";
    if (outlook === "none") return `There will be nothing for it: ${boundWords(bound)}.`;
    return `There will be ${show(given, "volume")} of ${show(asked, "volume")}: ${boundWords(bound)}.`;
  };
  return <p classList={{ short: props.week.outlook !== "all" }}>{words()}</p>;
}

function useDays() {
  const sheet = useSheet();
  return (date: number | string) => dateWords(date, sheet.showOptions().locale);
}

function Boxes(props: { readonly waterings: readonly Watering[] }) {
  const show = useShow();
  const day = useDays();
  return (
    <ul class="boxes">
      <For each={props.waterings}>
        {(watering) => (
          <li>
            <i aria-hidden="true" /> {day(watering.date)}: {show(watering.asked, "volume")}
            <Show when={watering.given < watering.asked && watering.bound}>
              , but only {show(watering.given, "volume")}
            </Show>
          </li>
        )}
      </For>
    </ul>
  );
}

function BedPlan(props: { readonly card: Card; readonly week: WeekOfBed }) {
  const sheet = useSheet();
  const show = useShow();
  const wayWords = useWayWords();
  const weekdays = () => sheet.shown(`${props.card.id}.week_days`);
  const each = () => (props.week.each === null ? "" : show(props.week.each, "volume"));
  const ways = () => {
    const own = props.week.ways.map(wayWords);
    const byCan = props.week.ways.some(({ trips }) => trips > 0);
    return byCan ? own : [...own, `${sheet.shown(`${props.card.id}.week_cans`)} cans`];
  };
  return (
    <li>
      <h3>{props.card.title}</h3>
      <Show
        when={props.week.waterings.length > 0}
        fallback={<p>Lacks {show(props.week.lacks, "volume")}; asks for nothing this week.</p>}
      >
        <p class="headline">
          {weekdays()}, {each()}
          {props.week.waterings.length > 1 ? " each" : ""}: {perhapsListed(ways())}
        </p>
        <Boxes waterings={props.week.waterings} />
        <Outlook week={props.week} />
        <Show when={props.week.assumed}>
          <p class="aside">
            No day of its last soak is given, so it is taken to want water on the first day.
          </p>
        </Show>
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

function Body() {
  const sheet = useSheet();
  const beds = useWeekBeds();
  const day = useDays();
  const span = (): WeekSpan | null => {
    const result = sheet.result("season.week_span");
    return result?.state === "ready" ? (result.value as WeekSpan) : null;
  };
  const assumed = () =>
    span()?.assumedTanks.map((id) => sheet.worksheet().cards.find((card) => card.id === id)?.title ?? id) ??
    [];
  return (
    <>
      <h2>Watering, {sheet.worksheet().title}</h2>
      <Today />
      <Show when={span()} fallback={<p>Say what day it is, and the week is planned from there.</p>}>
        {(held) => (
          <>
            <p>
              {day(held().first)} to {day(held().last)}, if no rain comes. After a good rain, leave the next
              watering out.
            </p>
            <ul class="plan">
              <For each={beds()}>
                {({ card, result }) => (
                  <Show
                    when={result?.state === "ready" && (result.value as WeekOfBed)}
                    fallback={
                      <li>
                        <h3>{card.title}</h3>
                        <p>{sheet.failure(`${card.id}.week`) ?? "It is left out of the plan."}</p>
                      </li>
                    }
                  >
                    {(week) => <BedPlan card={card} week={week()} />}
                  </Show>
                )}
              </For>
            </ul>
            <Show when={assumed().length > 0}>
              <p class="aside">
                {listed(assumed())} {assumed().length === 1 ? "was" : "were"} not dipped: taken as full as on
                the record's first day. Dip and enter the depth for a plan you can lean on.
              </p>
            </Show>
            <p class="aside">Roof water goes on the soil, not on the leaves. Wash what you eat raw.</p>
          </>
        )}
      </Show>
    </>
  );
}

/** The button at the head of the page, and the plan behind it. */
export function WeekPlan() {
  const sheet = useSheet();
  const [open, setOpen] = createSignal(false);
  const beds = useWeekBeds();
  return (
    <Show when={beds().length > 0}>
      <button type="button" class="tool" onClick={() => setOpen(true)}>
        This week
      </button>
      <Show when={open()}>
        <Portal>
          <dialog
            class="week sheet-of-paper"
            aria-label="The week's plan"
            aria-busy={sheet.working()}
            ref={(element) => queueMicrotask(() => element.showModal())}
            onClose={() => setOpen(false)}
          >
            <form method="dialog">
              <button type="button" class="tool" onClick={() => window.print()}>
                Print the plan
              </button>
              <button type="submit" class="close">
                Close
              </button>
            </form>
            <Body />
          </dialog>
        </Portal>
      </Show>
    </Show>
  );
}
