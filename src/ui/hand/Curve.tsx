// What the chosen answers would be all along the axis of the number in hand. The axis is the slider.

import { createMemo, For, Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import { type TurnedRow, turnedPlot, turnedTable, turnedWords } from "../../scene/turned-plot.ts";
import { Chart, TableBehind } from "../charts/Chart.tsx";
import { useSheet } from "../sheet.ts";
import { Slider, TwoThumbs } from "./Axis.tsx";
import { AxisWords, WORD_ROW, WORD_ROWS } from "./AxisWords.tsx";
import { Another, Caption, WithOthers } from "./Caption.tsx";
import type { InHand, Panel } from "./hand.ts";
import { named } from "./named.ts";
import { toneOf } from "./tones.ts";

type Props = { readonly turned: InHand; readonly dock: boolean };

/** Room over a curve for words, and its own height; for one answer, and for the first and second of two [px]. */
type Room = { readonly above: number; readonly height: number };
const ROOM: Readonly<Record<"desk" | "dock", readonly [Room, Room, Room]>> = {
  desk: [
    { above: 20, height: 92 },
    { above: 18, height: 64 },
    { above: 18, height: 64 },
  ],
  // One caption's height less for two: the second curve has no words of its own, its caption says them.
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

/** Where the number stands on its axis and stood, with what an answer is and was there. */
function useStanding(turned: InHand) {
  const sheet = useSheet();
  const { hand } = sheet;
  const place = (): number | null => {
    const at = hand.place();
    // Where the number is refused, what stands is the answer without its part.
    const isRefused = sheet.failure(turned.id) !== null;
    return at === null || at < 0 || at > 1 || isRefused || sheet.doubting()?.span() ? null : at;
  };
  const saidOf = (answer: string) => (sheet.result(answer)?.state === "pending" ? "" : sheet.shown(answer));
  return {
    place,
    saidOf,
    now: (answer: string) => {
      const [at, state] = [place(), sheet.result(answer)?.state];
      // Without an answer it stands nowhere on the curve, not between its neighbors either.
      const isNone = state === "failed" || state === "none";
      return at === null || isNone
        ? null
        : { place: at, answer: numberIn(sheet.result(answer)), said: saidOf(answer) };
    },
    before: (answer: string) => {
      const was = hand.before();
      return was && { place: was.place, answer: was.answer(answer), said: was.said(answer) };
    },
  };
}

/** A panel's curve with what stands now and what was before on it. */
function usePanelPlot(props: Props & { readonly panel: Panel }, isMute: () => boolean) {
  const sheet = useSheet();
  const { hand } = sheet;
  const isWhole = useIsWhole();
  const { now, before } = useStanding(props.turned);
  return createMemo(() => {
    const plot = turnedPlot({
      points: props.panel.points,
      words: hand.axis()?.form === "words",
      now: now(props.panel.answer),
      before: before(props.panel.answer),
      tone: toneOf(sheet, props.panel.answer),
      old: hand.curve().state === "old",
      whole: isWhole(),
    });
    return isMute() ? { ...plot, marks: plot.marks.map((mark) => ({ ...mark, label: "" })) } : plot;
  });
}

function PanelView(props: Props & { readonly panel: Panel }) {
  const sheet = useSheet();
  const { hand } = sheet;
  const isWhole = useIsWhole();
  const isSecond = () => props.panel.answer !== hand.answer();
  const plot = usePanelPlot(props, () => props.dock && isSecond());
  const withOthers = () =>
    (!isSecond() && sheet.doubting()?.span() && sheet.doubting()?.withOthers(props.panel.answer)) || "";
  const room = (): Room => {
    const usual = ROOM[props.dock ? "dock" : "desk"][hand.second() === null ? 0 : isSecond() ? 2 : 1];
    // In the dock the second line of words has its room from the curve; two curves leave none.
    const isLower = hand.axis()?.form === "words" || withOthers() !== "";
    const isRoomy = hand.second() === null;
    const less = props.dock && isLower && isRoomy ? WORD_ROW : 0;
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
      <Show when={!props.dock || hand.second() === null}>
        <WithOthers said={withOthers()} />
      </Show>
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

/** The curve as a table, with where the number stands and stood. */
function SpokenTable(props: Props) {
  const sheet = useSheet();
  const standing = useStanding(props.turned);
  const rows = (answers: readonly string[]): readonly TurnedRow[] => {
    const [at, was] = [standing.place(), sheet.hand.before()];
    const now = at !== null && {
      place: at,
      text: `${sheet.shown(props.turned.id)}, in hand`,
      said: answers.map(standing.saidOf),
    };
    return [
      ...(now ? [now] : []),
      ...(was ? [{ place: was.place, text: was.text, said: answers.map(was.said) }] : []),
    ];
  };
  const table = () => {
    const panels = sheet.hand.curve().panels;
    const shown = panels.map(({ answer, points }) => ({
      label: named(sheet, answer, props.turned.card),
      points,
    }));
    const { label } = props.turned.row;
    return turnedTable(`${label}, tried`, label, shown, rows(panels.map(({ answer }) => answer)));
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
        <Show when={doubting()?.span()} fallback={<Slider turned={props.turned} />}>
          {(span) => <TwoThumbs turned={props.turned} span={span()} />}
        </Show>
        <AxisWords lines={props.dock && hand.second() !== null ? 1 : WORD_ROWS} />
        <SpokenTable {...props} />
      </div>
    </Show>
  );
}
