// The charts and tables of a card, whatever its kind: each out of a hidden row, the chart always with its table.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Figure, FigureChart, FigureRow } from "../../graph/figure.ts";
import { valueIn } from "../../graph/readers.ts";
import { figurePlot, figureTable, figureTone, figureWords } from "../../scene/figure-chart.ts";
import { useSheet } from "../sheet.ts";
import { Chart, PlainTable } from "./Chart.tsx";

const HEIGHT = 180;
const MARGIN = { above: 26, below: 26, right: 26 };

function Key(props: { readonly chart: FigureChart }) {
  return (
    <p class="plot plot-key">
      <For each={props.chart.curves}>
        {(curve) => (
          <span>
            <svg viewBox="0 0 30 8" width="30" height="8" aria-hidden="true">
              <path class={`plot-line ${figureTone(curve)}`} d="M0,4H30" />
            </svg>{" "}
            {curve.label}
          </span>
        )}
      </For>
    </p>
  );
}

function One(props: { readonly figure: Figure; readonly title: string }) {
  const sheet = useSheet();
  const table = () => figureTable(props.figure, props.title, sheet.showOptions());
  return (
    <>
      <p>{props.figure.says}</p>
      <Show when={props.figure.chart} fallback={<PlainTable table={table()} />}>
        {(chart) => (
          <>
            <Key chart={chart()} />
            <Chart
              plot={(width) => figurePlot(chart(), width, sheet.showOptions())}
              words={figureWords(props.figure, sheet.showOptions())}
              height={HEIGHT}
              margin={MARGIN}
              table={table()}
            />
          </>
        )}
      </Show>
      <Show when={props.figure.note}>{(note) => <p class="aside">{note()}</p>}</Show>
    </>
  );
}

function Place(props: { readonly card: Card; readonly of: FigureRow }) {
  const sheet = useSheet();
  const result = () => sheet.result(`${props.card.id}.${props.of.row}`);
  const figure = createMemo(() => valueIn(result()) as Figure | null);
  return (
    <Show when={figure()}>
      {(now) => (
        <section
          class="figure"
          id={`${props.card.id}.${props.of.row}`}
          aria-label={props.of.title}
          tabindex="-1"
        >
          <h2>{props.of.title}</h2>
          <One figure={now()} title={props.of.title} />
        </section>
      )}
    </Show>
  );
}

export function Figures(props: { readonly card: Card }) {
  const sheet = useSheet();
  return (
    <For each={sheet.kinds[props.card.kind]?.figures ?? []}>
      {(of) => <Place card={props.card} of={of} />}
    </For>
  );
}
