// What the chosen answers would be all along the axis of the number in hand. The axis is the slider.

import { createMemo, For, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import { turnedPlot, turnedTable, turnedWords } from "../../scene/turned-plot.ts";
import { Chart, TableBehind } from "../charts/Chart.tsx";
import { useSheet } from "../sheet.ts";
import { AxisWords, INSET, WORD_ROW } from "./AxisWords.tsx";
import type { End, SpanInHand } from "./doubting.ts";
import type { InHand, Panel } from "./hand.ts";
import { named } from "./named.ts";
import { toneOf } from "./tones.ts";

type Props = { readonly turned: InHand; readonly dock: boolean };

/** Which answer is drawn, with what it is and was; pressed, another one is chosen. */
function Caption(props: { readonly answer: string; readonly second: boolean }) {
  const sheet = useSheet();
  const was = () => {
    const text = sheet.hand.before()?.said(props.answer) ?? "";
    return text !== "" && text !== sheet.shown(props.answer) ? text : null;
  };
  const own = () => sheet.hand.turned()?.card ?? null;
  return (
    <p class="caption">
      <select
        aria-label={props.second ? "The second answer over it" : "The answer over it"}
        value={props.answer}
        onChange={(event) => {
          const id = event.currentTarget.value;
          sheet.looking.chooseAnswer(id === "" ? props.answer : id, props.second);
        }}
      >
        <Show when={props.second}>
          <option value={sheet.hand.answer() ?? ""}>only one answer</option>
        </Show>
        <For each={sheet.hand.answers().filter((id) => !props.second || id !== sheet.hand.answer())}>
          {(id) => (
            <option value={id} selected={id === props.answer}>
              {named(sheet, id, own())}
            </option>
          )}
        </For>
      </select>
      <b classList={{ old: sheet.result(props.answer)?.state === "pending" }}>
        {sheet.doubting()?.spanOf(props.answer) ?? sheet.shown(props.answer)}
      </b>
      <Show when={was()}>{(text) => <span class="was">was {text()}</span>}</Show>
    </p>
  );
}

/** Offers to draw another answer over the same axis. */
function Another() {
  const sheet = useSheet();
  const others = () => sheet.hand.answers().filter((id) => id !== sheet.hand.answer());
  return (
    <Show when={sheet.hand.second() === null && others().length > 0}>
      <select
        class="another"
        aria-label="Another answer over the same axis"
        value=""
        onChange={(event) => sheet.looking.chooseAnswer(event.currentTarget.value, true)}
      >
        <option value="">and …</option>
        <For each={others()}>
          {(id) => <option value={id}>{named(sheet, id, sheet.hand.turned()?.card ?? null)}</option>}
        </For>
      </select>
    </Show>
  );
}

/** Room over a curve for words, and its own height; for one answer, and for the first and second of two [px]. */
type Room = { readonly above: number; readonly height: number };
const ROOM: Readonly<Record<"desk" | "dock", readonly [Room, Room, Room]>> = {
  desk: [
    { above: 20, height: 92 },
    { above: 18, height: 64 },
    { above: 18, height: 64 },
  ],
  // One caption's height less for two: the words of the second curve stand beside its caption.
  dock: [
    { above: 18, height: 67 },
    { above: 13, height: 24 },
    { above: 0, height: 24 },
  ],
};

/** A curve that gives up room for a second line of words keeps so much [px]. */
const LEAST_CURVE = 20;

/** What lies between the two ends of a number that is not sure. */
function Band() {
  const sheet = useSheet();
  return (
    <Show when={sheet.doubting()?.span()}>
      {(span) => (
        <div class="doubt-field">
          <div
            class="doubt-band"
            style={{
              left: `${100 * span().low.place}%`,
              width: `${100 * (span().high.place - span().low.place)}%`,
            }}
          />
        </div>
      )}
    </Show>
  );
}

/** Whether every value of the number in hand was tried. */
const useIsWhole = () => {
  const { hand } = useSheet();
  return () => hand.curve().state === "ready";
};

/** A panel's curve with what stands now and what was before on it. */
function usePanelPlot(props: Props & { readonly panel: Panel }) {
  const sheet = useSheet();
  const { hand } = sheet;
  const isWhole = useIsWhole();
  const now = () => {
    const place = hand.place();
    const result = sheet.result(props.panel.answer);
    // Where the number is refused, what stands is the answer without its part.
    const isRefused = sheet.failure(props.turned.id) !== null;
    return place === null || place < 0 || place > 1 || isRefused || sheet.doubting()?.span()
      ? null
      : {
          place,
          answer: numberIn(result),
          said: result?.state === "pending" ? "" : sheet.shown(props.panel.answer),
        };
  };
  const before = () => {
    const was = hand.before();
    return (
      was && { place: was.place, answer: was.answer(props.panel.answer), said: was.said(props.panel.answer) }
    );
  };
  return createMemo(() =>
    turnedPlot({
      points: props.panel.points,
      words: hand.axis()?.form === "words",
      now: now(),
      before: before(),
      tone: toneOf(sheet, props.panel.answer),
      old: hand.curve().state === "old",
      whole: isWhole(),
    }),
  );
}

function PanelView(props: Props & { readonly panel: Panel }) {
  const sheet = useSheet();
  const { hand } = sheet;
  const isWhole = useIsWhole();
  const plot = usePanelPlot(props);
  const isSecond = () => props.panel.answer !== hand.answer();
  const room = (): Room => {
    const usual = ROOM[props.dock ? "dock" : "desk"][hand.second() === null ? 0 : isSecond() ? 2 : 1];
    // In the dock the second line of words has its room from the curve.
    const less = props.dock && hand.axis()?.form === "words" && !isSecond() ? WORD_ROW : 0;
    return { above: usual.above, height: Math.max(LEAST_CURVE, usual.height - less) };
  };
  return (
    <div class="panel">
      <div class="captions">
        <Caption answer={props.panel.answer} second={isSecond()} />
        <Show when={!isSecond()}>
          <Another />
        </Show>
      </div>
      <div class="over-axis">
        <Band />
        <Chart
          plot={plot()}
          words={turnedWords(
            named(sheet, props.panel.answer, props.turned.card),
            props.panel.points,
            isWhole(),
          )}
          height={room().height}
          margin={{ above: room().above, below: 0 }}
        />
      </div>
    </div>
  );
}

/** The axis itself: a slider whose scale stands still. */
function Slider(props: Props) {
  const { hand, shown } = useSheet();
  // Nought has no place on an axis in ratios: the thumb waits at its low end.
  const place = () => Math.min(1, Math.max(0, hand.place() ?? 0));
  return (
    <input
      type="range"
      class="in-hand-slider"
      classList={{ empty: hand.place() === null }}
      aria-label={`${props.turned.row.label}, slider`}
      aria-valuetext={shown(props.turned.id)}
      min="0"
      max="1"
      step="any"
      value={place()}
      onInput={(event) => {
        hand.slide(event.currentTarget.valueAsNumber);
        // The thumb stands on the round value, not where the finger is.
        event.currentTarget.value = String(place());
      }}
      onKeyDown={(event) => {
        const by = STEP_KEYS.get(event.key);
        if (by === undefined) return;
        event.preventDefault();
        hand.step(by, event.shiftKey || event.key.startsWith("Page"));
      }}
    />
  );
}

const ENDS: readonly (readonly [End, string])[] = [
  ["low", "at least"],
  ["high", "at most"],
];

/** The axis with a thumb for each end of a number that is not sure. */
function TwoThumbs(props: Props & { readonly span: SpanInHand }) {
  const { doubting } = useSheet();
  const place = (end: End) => props.span[end].place;
  return (
    <div class="two-thumbs">
      <div
        class="between"
        style={{
          left: `calc(${INSET}px + ${place("low")} * (100% - ${2 * INSET}px))`,
          width: `calc(${place("high") - place("low")} * (100% - ${2 * INSET}px))`,
        }}
      />
      <For each={ENDS}>
        {([end, word]) => (
          <input
            type="range"
            class="in-hand-slider"
            aria-label={`${props.turned.row.label}, ${word}`}
            aria-valuetext={props.span[end].text}
            min="0"
            max="1"
            step="any"
            value={place(end)}
            onInput={(event) => {
              doubting()?.slide(end, event.currentTarget.valueAsNumber);
              event.currentTarget.value = String(place(end));
            }}
            onKeyDown={(event) => {
              const by = STEP_KEYS.get(event.key);
              if (by === undefined) return;
              event.preventDefault();
              doubting()?.step(end, by, event.shiftKey || event.key.startsWith("Page"));
            }}
          />
        )}
      </For>
    </div>
  );
}

const STEP_KEYS: ReadonlyMap<string, 1 | -1> = new Map([
  ["ArrowUp", 1],
  ["ArrowRight", 1],
  ["PageUp", 1],
  ["ArrowDown", -1],
  ["ArrowLeft", -1],
  ["PageDown", -1],
]);

function SpokenTable(props: Props) {
  const sheet = useSheet();
  const table = () => {
    const panels = sheet.hand.curve().panels;
    const shown = panels.map(({ answer, points }) => ({
      label: named(sheet, answer, props.turned.card),
      points,
    }));
    return turnedTable(`${props.turned.row.label}, tried`, props.turned.row.label, shown);
  };
  return <TableBehind table={table()} />;
}

export function Turning(props: Props) {
  const { hand, doubting } = useSheet();
  const curve = () => hand.curve();
  const isBusy = () => curve().state === "working" || curve().state === "old";
  return (
    <Show when={hand.axis()}>
      <div class="turning" aria-busy={isBusy()}>
        <Show when={curve().state === "failed"}>
          <p class="wrong">{curve().reason}</p>
        </Show>
        <Show when={curve().state === "still"}>
          <p class="still">No answer moves with it.</p>
        </Show>
        <For each={curve().panels.map(({ answer }) => answer)}>
          {(answer) => (
            <Show when={curve().panels.find((panel) => panel.answer === answer)}>
              {(panel) => <PanelView {...props} panel={panel()} />}
            </Show>
          )}
        </For>
        <Show when={doubting()?.span()} fallback={<Slider {...props} />}>
          {(span) => <TwoThumbs {...props} span={span()} />}
        </Show>
        <AxisWords />
        <Show when={!props.dock}>
          <SpokenTable {...props} />
        </Show>
      </div>
    </Show>
  );
}
