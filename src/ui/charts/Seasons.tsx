// The strip of seasons: a bar of short days each, a green tick for none; pressing one, or arrow keys, choose the season.

import { createMemo, Index, Show } from "solid-js";
import type { Frame } from "../../scene/plot-marks.ts";
import type { Season, StoredSeries } from "../../scene/stored-water.ts";
import {
  BAR,
  seasonsPlot,
  seasonsTable,
  seasonWords,
  yearsWritten,
  yearWaterTable,
} from "../../scene/time-plots.ts";
import { useSheet } from "../sheet.ts";
import { Chart, TableBehind } from "./Chart.tsx";
import type { YearShown } from "./year-shown.ts";

/** The years are written so far under the bars [px]. */
const BELOW = 17;
/** The frame of the chosen season is so much wider than its bar [px]. */
const AROUND_BAR = 12;
/** So wide it holds its year, too [px]. */
const AROUND_YEAR = 36;
const TICK = { width: 12, height: 3 };

const KEYS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowRight: (at) => at + 1,
  ArrowUp: (at) => at + 1,
  ArrowLeft: (at) => at - 1,
  ArrowDown: (at) => at - 1,
  Home: () => 0,
  End: (_, last) => last,
};

function One(props: {
  readonly season: Season;
  readonly was: Season | null;
  readonly place: number;
  readonly frame: Frame;
  readonly chosen: boolean;
  readonly written: boolean;
  readonly focusable: boolean;
}) {
  const left = () => props.frame.across(props.place);
  const width = () => props.frame.across(1);
  const middle = () => left() + width() / 2;
  // Among narrow bars it stands around its own alone: with its year it would cut through those beside it.
  const holdsYear = () => width() >= AROUND_YEAR;
  const box = () => (holdsYear() ? Math.max(Math.min(40, width()), BAR * width() + AROUND_BAR) : width());
  return (
    // biome-ignore lint/a11y/useSemanticElements: no input can stand within an SVG drawing
    <g
      role="radio"
      class="season"
      classList={{ chosen: props.chosen }}
      data-year={props.season.year}
      tabindex={props.focusable ? "0" : "-1"}
      aria-checked={props.chosen}
      aria-label={seasonWords(props.season, props.was)}
    >
      <Show when={props.chosen}>
        <rect
          class="around"
          x={middle() - box() / 2}
          y="-5"
          width={box()}
          height={props.frame.height + 5 + (holdsYear() ? BELOW : 2)}
          rx="3"
        />
      </Show>
      <Show when={props.season.daysShort === 0}>
        <rect
          class="met"
          x={middle() - Math.min(TICK.width, width() * 0.6) / 2}
          y={props.frame.height - TICK.height}
          width={Math.min(TICK.width, width() * 0.6)}
          height={TICK.height}
        />
      </Show>
      <Show when={props.written}>
        <text x={middle()} y={props.frame.height + 13} text-anchor="middle">
          {props.chosen ? props.season.year : String(props.season.year % 100).padStart(2, "0")}
        </text>
      </Show>
      <rect class="hit" x={left()} y="-6" width={width()} height={props.frame.height + BELOW + 6} />
    </g>
  );
}

/** The bars as one set of choices, which is one stop of the keyboard. */
function Choices(props: { readonly shown: YearShown; readonly frame: Frame }) {
  const { looking } = useSheet();
  const seasons = () => props.shown.seasons();
  const at = createMemo(() => seasons().findIndex(({ year }) => year === props.shown.year()));
  const written = createMemo(() => yearsWritten(seasons(), props.shown.year(), props.frame.width));
  const before = createMemo(() => new Map((props.shown.heldSeasons() ?? []).map((one) => [one.year, one])));
  const onKey = (event: KeyboardEvent & { readonly currentTarget: Element }): void => {
    const next = KEYS[event.key]?.(at(), seasons().length - 1);
    const season = next === undefined ? undefined : seasons()[next];
    if (next === undefined) return;
    event.preventDefault();
    if (!season) return;
    const strip = event.currentTarget;
    looking.chooseYear(season.year);
    queueMicrotask(() => strip.querySelector<SVGElement>(`[data-year="${season.year}"]`)?.focus());
  };
  const onPress = (event: MouseEvent): void => {
    const year = event.target instanceof Element ? event.target.closest("[data-year]") : null;
    if (year) looking.chooseYear(Number(year.getAttribute("data-year")));
  };
  return (
    <g role="radiogroup" aria-label="Season" onKeyDown={onKey} onClick={onPress}>
      <Index each={seasons()}>
        {(season, place) => (
          <One
            season={season()}
            was={before().get(season().year) ?? null}
            place={place}
            frame={props.frame}
            chosen={place === at()}
            written={written()[place] ?? false}
            focusable={place === Math.max(0, at())}
          />
        )}
      </Index>
    </g>
  );
}

export function Seasons(props: { readonly shown: YearShown }) {
  const sheet = useSheet();
  const both = () => ({ now: props.shown.seasons(), held: props.shown.heldSeasons() });
  const isPhone = () => sheet.looking.width() === "phone";
  const around = (year: number) => props.shown.around(year) ?? { from: 0, to: 0 };
  const yearTable = (series: StoredSeries) => {
    const year = props.shown.span();
    const both = { now: series, held: props.shown.heldSeries() };
    return year && yearWaterTable({ series: both, year }, sheet.showOptions());
  };
  const words = () => {
    const short = both().now.filter(({ daysShort }) => daysShort > 0).length;
    return `Short days, season by season: ${short} of ${both().now.length} seasons have any.`;
  };
  return (
    <section class="seasons" aria-label="Short days, season by season">
      <header>
        <h2>Short days, season by season</h2>
        <Show when={both().held}>
          <span class="aside">dashed: as held</span>
        </Show>
        <Show when={sheet.stored()}>
          {(series) => (
            <TableBehind
              table={seasonsTable(both(), series(), around, sheet.showOptions())}
              more={yearTable(series())}
            />
          )}
        </Show>
      </header>
      <Chart
        plot={seasonsPlot(both())}
        words={words()}
        height={isPhone() ? 24 : 42}
        margin={{ above: 6, below: BELOW }}
      >
        {(frame) => <Choices shown={props.shown} frame={frame()} />}
      </Chart>
    </section>
  );
}
