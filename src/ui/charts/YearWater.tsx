// One year's water in the tanks, which is also the slider of days: dragged, or with arrow keys, it moves the drawing's water.

import { createMemo, createSignal, For, onCleanup, Show } from "solid-js";
import { valueIn } from "../../graph/readers.ts";
import type { DayNotes as Notes } from "../../kinds/bed/gets.ts";
import { dayOf, type StoredSeries, type Year } from "../../scene/stored-water.ts";
import { shortSaid, yearPlotOf } from "../../scene/time-plots.ts";
import { dayNotes } from "../../telling/bed-day.ts";
import { tanksNamed } from "../../telling/named-tanks.ts";
import { showQuantity } from "../../units/show.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { dayAndMonth } from "../words.ts";
import { Chart } from "./Chart.tsx";
import { DaySlider } from "./DaySlider.tsx";
import type { YearShown } from "./year-shown.ts";

/** A year plays in about twenty seconds; where less motion is wished for, in weekly steps. */
const TICK = { milliseconds: 55, days: 1 };
const CALM_TICK = { milliseconds: 700, days: 7 };
/** A volume as one would say it. */
const SAID_FIGURES = 2;

/** What the waterings of a day lacked, bed by bed. */
function notesOn(sheet: Sheet, day: number): readonly string[] {
  const { cards } = sheet.worksheet();
  const readyOf = (id: string): unknown => {
    const result = sheet.result(id);
    return result?.state === "pending" ? result.last : valueIn(result);
  };
  const titled = (id: unknown) => cards.find((card) => card.id === id)?.title;
  const network = readyOf("season.network");
  const beds = cards.flatMap(({ id, title }) => {
    const notes = readyOf(`${id}.day_notes`) as Notes | null;
    if (!notes) return [];
    const ways = readyOf(`${id}.watered_by`);
    const titles = Array.isArray(ways) ? ways.map((way) => titled(way) ?? "another way") : [];
    return [{ title, notes, ways: titles, tanks: tanksNamed(network, id, (tank) => titled(tank) ?? tank) }];
  });
  return dayNotes(beds, day, (si, measure) =>
    showQuantity(si, measure, { ...sheet.showOptions(), figures: SAID_FIGURES }),
  );
}

/** Plays the year from its beginning; where it was paused, and nobody took another day since, from there on. */
function createPlay(span: () => Year | null, day: () => number | null, onDay: (day: number) => void) {
  const [playing, setPlaying] = createSignal(false);
  const [pausedAt, setPausedAt] = createSignal<number | null>(null);
  const isPaused = () => pausedAt() !== null && pausedAt() === day() && day() !== span()?.to;
  let timer: ReturnType<typeof setInterval> | undefined;
  const stop = (): void => {
    clearInterval(timer);
    setPlaying(false);
  };
  const step = (days: number): void => {
    const [year, now] = [span(), day()];
    const next = year && now !== null ? Math.min(year.to, now + days) : null;
    if (next !== null) onDay(next);
    if (next === null || next >= (year?.to ?? next)) stop();
  };
  const play = (): void => {
    const year = span();
    if (!year) return;
    if (!isPaused()) onDay(year.from);
    const tick = matchMedia("(prefers-reduced-motion: reduce)").matches ? CALM_TICK : TICK;
    setPlaying(true);
    timer = setInterval(() => step(tick.days), tick.milliseconds);
  };
  onCleanup(stop);
  const pause = (): void => {
    stop();
    setPausedAt(day());
  };
  return { playing, isPaused, stop, toggle: () => (playing() ? pause() : play()) };
}

function DayNotes(props: { readonly notes: readonly string[] }) {
  return (
    <ul class="day-notes" title={props.notes.join(" ")}>
      <For each={props.notes}>{(text) => <li>{text} </li>}</For>
    </ul>
  );
}

function Head(props: {
  readonly shown: YearShown;
  /** How many days are short, as one says it. */
  readonly short: string;
  readonly notes: readonly string[];
  readonly playing: boolean;
  readonly paused: boolean;
  readonly onPlay: () => void;
}) {
  const { looking } = useSheet();
  return (
    <header>
      <h2>
        Water<span class="wordy"> in the tanks</span>, {props.shown.year()}
        <Show when={props.short !== ""}>
          <b class="short-said"> {props.short}</b>
        </Show>
      </h2>
      <Show
        when={props.notes.length > 0 && looking.width() !== "phone"}
        fallback={
          <span class="aside">
            {props.shown.asDipped() ? "the drawing: as dipped today" : "drag to a day"}
          </span>
        }
      >
        <DayNotes notes={props.notes} />
      </Show>
      <Show when={props.shown.dipped() && !props.shown.asDipped()}>
        <button
          type="button"
          onClick={() => {
            looking.chooseYear(null);
            looking.setDay(null);
          }}
        >
          As dipped today
        </button>
      </Show>
      <button type="button" class="run" onClick={() => props.onPlay()}>
        {props.playing ? "Pause" : props.paused ? "Run on" : "Run the year"}
      </button>
    </header>
  );
}

export function YearWater(props: {
  readonly shown: YearShown;
  readonly series: StoredSeries;
  readonly span: Year;
}) {
  const sheet = useSheet();
  const { shown } = props;
  const setDay = (day: number): void => sheet.looking.setDay(dayOf(day));
  const day = () => shown.day() ?? props.span.from;
  const play = createPlay(shown.span, shown.day, setDay);
  const daysOf = (seasons: ReturnType<YearShown["heldSeasons"]>): number | null =>
    seasons?.find(({ year }) => year === shown.year())?.daysShort ?? null;
  const short = () => shortSaid({ now: daysOf(shown.seasons()), held: daysOf(shown.heldSeasons()) });
  const plot = (width: number) =>
    yearPlotOf(
      { series: { now: props.series, held: shown.heldSeries() }, year: props.span },
      width,
      sheet.showOptions(),
    );
  const volume = () =>
    showQuantity(props.series.stored[day() - props.series.firstDay] ?? 0, "volume", sheet.showOptions());
  // While a year plays they would only flicker.
  const notes = createMemo(() =>
    play.playing() || shown.asDipped() ? [] : notesOn(sheet, day() - props.series.firstDay),
  );
  const isPhone = () => sheet.looking.width() === "phone";
  return (
    <section class="year-water" aria-label={`Water in the tanks, ${shown.year()}`}>
      <Head
        shown={shown}
        short={short()}
        notes={notes()}
        playing={play.playing()}
        paused={play.isPaused()}
        onPlay={play.toggle}
      />
      <Chart
        plot={plot}
        words="Water in all tanks, day by day, with the short days along the foot"
        height={isPhone() ? 46 : 88}
        margin={{ above: 20, below: isPhone() ? 20 : 22 }}
      >
        {(frame) => (
          <DaySlider
            frame={frame()}
            span={props.span}
            day={day()}
            name="Day that the drawing shows"
            label={dayAndMonth(day(), sheet.showOptions().locale)}
            said={`${dayAndMonth(day(), sheet.showOptions().locale)}, ${volume()} in the tanks`}
            onDay={(next) => {
              play.stop();
              setDay(next);
            }}
          />
        )}
      </Chart>
      <Show when={isPhone() && notes().length > 0}>
        <DayNotes notes={notes()} />
      </Show>
    </section>
  );
}
