// How long the water lasts: one sentence, the water left in each past year, the day each goes short, and what one expects.

import { createMemo, createSignal, For, Show } from "solid-js";
import { isReady, numberIn } from "../../graph/readers.ts";
import {
  type Lasts as Drawn,
  dotRadius,
  dotRows,
  dotsPlot,
  fanKey,
  fanPlot,
  lastsTable,
} from "../../scene/lasts-plot.ts";
import {
  aloneSaid,
  daySaid,
  emptySaid,
  type FromToday,
  forecastSaid,
  lastsPieces,
  lastsSaid,
  restsOn,
  ruleSaid,
  soFarSaid,
} from "../../telling/from-today.ts";
import type { MeasureName } from "../../units/measures.ts";
import { showQuantity } from "../../units/show.ts";
import { Chart, PlainTable } from "../charts/Chart.tsx";
import { DaySlider } from "../charts/DaySlider.tsx";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";
import { ForecastDays } from "./Forecast.tsx";
import type { Lasting } from "./lasting.ts";
import { drawnOf } from "./lasts-drawn.ts";
import "./lasts.css";
import { Missing, useLack } from "./Missing.tsx";
import { useNoting } from "./noting-here.tsx";
import { useOutOfSeason } from "./out-of-season.ts";
import type { FieldPageProps } from "./pages.ts";
import { useSeasonAnswer } from "./use-season-answer.ts";

const FAN = 188;
/** As a gardener would say it aloud. */
const FIGURES = 2;

function useVoice() {
  const sheet = useSheet();
  return {
    titleOf: useTitleOf(),
    show: (si: number, measure: MeasureName) =>
      showQuantity(si, measure, { ...sheet.showOptions(), figures: FIGURES }),
  };
}

function Lead(props: { readonly from: FromToday; readonly old: boolean }) {
  const voice = useVoice();
  return (
    <div class="lasts-lead" classList={{ working: props.old }} aria-live="polite">
      <p>
        <For each={lastsPieces(props.from, voice.titleOf)}>
          {({ text, tone }) => (
            <Show when={tone !== "plain"} fallback={text}>
              <b class={tone}>{text}</b>
            </Show>
          )}
        </For>
      </p>
      <Show when={soFarSaid(props.from)}>{(said) => <p class="aside">{said()}</p>}</Show>
    </div>
  );
}

function Fan(props: { readonly from: FromToday; readonly drawn: Drawn }) {
  const sheet = useSheet();
  const voice = useVoice();
  const isOdds = () => props.from.kind === "odds";
  const isShortNow = () => props.drawn.lines.some(({ short }) => short === props.drawn.today);
  const isToldAgain = () => props.drawn.lines.some(({ short, told }) => short !== told);
  const [picked, setPicked] = createSignal<number | null>(null);
  const span = () => ({ from: props.drawn.today, to: props.drawn.last });
  const day = () => Math.max(span().from, Math.min(span().to, picked() ?? props.drawn.middle ?? span().to));
  return (
    <section class="lasts-fan">
      <h2>
        Water left{" "}
        <span>
          {isOdds()
            ? `a past year a line, to its first short day${isShortNow() ? " after today's" : ""}`
            : "in usual weather, and without rain"}
        </span>
      </h2>
      <ul class="fan-key">
        <For each={fanKey(props.drawn, isOdds())}>
          {({ as, tone, label }) => (
            <li>
              <i class={`${as} ${tone}`} aria-hidden="true" /> {label}
            </li>
          )}
        </For>
      </ul>
      <Chart
        plot={(width) => fanPlot(props.drawn, width, sheet.showOptions())}
        words={`Water left in reach of the beds. ${lastsSaid(props.from, voice.titleOf)} The table below has every run.`}
        height={FAN}
        margin={{ above: 24 }}
        scaleAtEnd
      >
        {(frame) => (
          <DaySlider
            frame={frame()}
            span={span()}
            day={day()}
            name="Day that is read"
            label={daySaid(props.from, day())}
            said={daySaid(props.from, day())}
            onDay={setPicked}
          />
        )}
      </Chart>
      <Show when={isOdds()}>
        <h2>
          {isToldAgain() ? "Short again, once watered" : "First short day"} <span>each dot a run</span>
        </h2>
        <Dots drawn={props.drawn} />
      </Show>
    </section>
  );
}

function Dots(props: { readonly drawn: Drawn }) {
  const [rows, setRows] = createSignal(1);
  return (
    <Chart
      plot={(width) => {
        setRows(dotRows(props.drawn, width));
        return dotsPlot(props.drawn, width);
      }}
      words="The day on which each run is short, a dot each; those never short at the season's end"
      height={rows() * dotRadius(props.drawn) * 2.3}
      margin={{ above: 4 }}
    />
  );
}

/** What the answer stands on: what there is, whose rule, which years, what is expected. */
function Assumed(props: { readonly from: FromToday; readonly lasting: Lasting }) {
  const sheet = useSheet();
  const voice = useVoice();
  const beds = () =>
    sheet.worksheet().cards.flatMap(({ id, title }) => {
      const turn = numberIn(sheet.result(`${id}.priority`));
      return isReady(sheet.result(`${id}.rule`)) && turn !== null
        ? [{ title, when: sheet.shown(`${id}.rule`), turn }]
        : [];
    });
  const inTurn = () => beds().sort((a, b) => a.turn - b.turn);
  const hold = () => numberIn(sheet.result("season.hold_days")) ?? 0;
  return (
    <details class="lasts-more">
      <summary>What was assumed</summary>
      <ul>
        <li>{ruleSaid(inTurn(), hold(), props.from.heldBack.map(voice.titleOf))}</li>
        <For each={restsOn(props.from, voice.titleOf)}>{(said) => <li>{said}</li>}</For>
        <For each={forecastSaid(props.lasting.expected(), props.from.kind === "odds", voice)}>
          {(said) => <li>{said}</li>}
        </For>
        <Show when={props.from.kind === "odds"}>
          <li>
            A dip may be off by {sheet.shown("season.dip_doubt")}: each past year starts from a level of its
            own.
          </li>
        </Show>
      </ul>
    </details>
  );
}

/** By which way of watering its days hold, and what the advised one would come to: asked once all its own runs are done. */
function Ways() {
  const { answer } = useSeasonAnswer((answers) => answers.advice());
  return (
    <p class="lasts-ways">
      Counted as the sheet waters.{" "}
      <Show when={answer()}>
        {(told) => (
          <>
            <b>As advised:</b> {told().asAdvised}
          </>
        )}
      </Show>
    </p>
  );
}

type Told = Pick<FieldPageProps, "go"> & { readonly from: FromToday; readonly lasting: Lasting };

function Answer(props: Told) {
  const sheet = useSheet();
  const voice = useVoice();
  const drawn = createMemo(() => drawnOf(props.from, props.lasting.expected()));
  const alone = () => {
    const held = props.lasting.alone();
    return held ? aloneSaid(held.from, voice.titleOf(held.bed)) : "";
  };
  return (
    <>
      <Lead from={props.from} old={props.lasting.working() || sheet.working()} />
      <Show
        when={drawn()}
        fallback={
          <div class="field-missing">
            <p>
              The season goes from {sheet.shown("site.season_start")} to {sheet.shown("site.season_end")}, as
              the sheet says.
            </p>
            <button type="button" onClick={() => props.go("year")}>
              The year
            </button>
          </div>
        }
      >
        {(held) => (
          <>
            <Show
              when={props.lasting.settled()}
              fallback={<p class="lasts-ways">Counted as the sheet waters.</p>}
            >
              <Ways />
            </Show>
            <Fan from={props.from} drawn={held()} />
            <ForecastDays lasting={props.lasting} isOdds={props.from.kind === "odds"} />
            <div class="lasts-counted">
              <p>
                Counted from <b>{voice.show(props.from.now, "volume")}</b> that can reach the beds this
                morning.
              </p>
              <p>{emptySaid(props.from)}</p>
              <Show when={alone()}>{(said) => <p>{said()}</p>}</Show>
            </div>
            <Assumed from={props.from} lasting={props.lasting} />
            <details class="lasts-more">
              <summary>The same as a table</summary>
              <PlainTable table={lastsTable(held(), sheet.showOptions())} />
            </details>
          </>
        )}
      </Show>
    </>
  );
}

/** Nothing is told yet: why, and where to go on. */
function Untold(props: FieldPageProps & { readonly lasting: Lasting }) {
  const sheet = useSheet();
  const waiting = () => props.lasting.working() || sheet.working();
  const outside = useOutOfSeason();
  const lack = useLack(props);
  const why = () => (lack() ? "" : outside() || props.lasting.failure());
  const said = () => why() || (waiting() ? "Running the past years from today on" : "");
  return (
    <Show
      when={said()}
      fallback={<Missing {...props} undone="Dip a tank to see how long the water lasts." />}
    >
      {(words) => (
        <p class="lasts-lead" classList={{ working: waiting() }}>
          {words()}
        </p>
      )}
    </Show>
  );
}

export function Lasts(props: FieldPageProps) {
  const { lasting } = useNoting();
  return (
    <div class="field-body lasts">
      <Show when={lasting()} fallback={<p class="lasts-lead">Asking how long it lasts</p>}>
        {(held) => (
          <Show when={held().now()} fallback={<Untold {...props} lasting={held()} />}>
            {(from) => <Answer from={from()} lasting={held()} go={props.go} />}
          </Show>
        )}
      </Show>
    </div>
  );
}
