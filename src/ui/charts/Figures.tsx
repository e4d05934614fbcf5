// The charts and tables of a card, whatever its kind: each out of a hidden row, the chart always with its table.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Figure, FigureChart, FigureColumn, FigureRow } from "../../graph/figure.ts";
import { valueIn } from "../../graph/readers.ts";
import { barsOf, drawFigure, figureWords } from "../../scene/figure-chart.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { createElementWidth } from "./element-width.ts";

/** Until it is measured. */
const WIDTH = 360;
const HEIGHT = 180;
/** Over the chart the words of a mark; under it those of the ticks. */
const ABOVE = 22;
const BELOW = 26;
/** From a point to its words. */
const BESIDE = 9;

function Key(props: { readonly chart: FigureChart }) {
  return (
    <p class="figure-key">
      <For each={props.chart.curves}>
        {(curve) => (
          <span>
            <svg viewBox="0 0 30 8" width="30" height="8" aria-hidden="true">
              <path class={curve.part} d="M0,4H30" />
            </svg>{" "}
            {curve.label}
          </span>
        )}
      </For>
    </p>
  );
}

function Chart(props: { readonly chart: FigureChart; readonly words: string }) {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(WIDTH);
  const drawn = createMemo(() =>
    drawFigure(props.chart, { width: width(), height: HEIGHT }, sheet.showOptions()),
  );
  const across = (value: number) => showQuantity(value, props.chart.across.measure, sheet.showOptions());
  const up = (value: number) => showQuantity(value, props.chart.up.measure, sheet.showOptions());
  return (
    <div ref={watch}>
      <svg viewBox={`0 ${-ABOVE} ${width()} ${HEIGHT + ABOVE + BELOW}`} role="img" aria-label={props.words}>
        <For each={drawn().up}>
          {(tick) => (
            <>
              <line class="grid" x1="0" x2={width()} y1={tick.at} y2={tick.at} />
              <text x="0" y={tick.at - 4}>
                {up(tick.value)}
              </text>
            </>
          )}
        </For>
        <line class="foot" x1="0" x2={width()} y1={HEIGHT} y2={HEIGHT} />
        <For each={drawn().across}>
          {(tick) => (
            <text x={tick.at} y={HEIGHT + 19} text-anchor={tick.at < 20 ? "start" : "middle"}>
              {across(tick.value)}
            </text>
          )}
        </For>
        <For each={drawn().lines}>{(line) => <path class={line.part} d={line.d} />}</For>
        <For each={drawn().marks}>
          {(mark) => (
            <g class="mark">
              <Show when={mark.y === null}>
                <line x1={mark.x} x2={mark.x} y1={-4} y2={HEIGHT} />
              </Show>
              <Show when={mark.y !== null}>
                <circle cx={mark.x} cy={mark.y ?? 0} r="5" />
              </Show>
              <text
                x={mark.x + (mark.y === null ? 0 : mark.anchor === "start" ? BESIDE : -BESIDE)}
                y={mark.y === null ? -8 : mark.y - 2}
                text-anchor={mark.anchor}
              >
                {mark.label}
              </text>
            </g>
          )}
        </For>
      </svg>
    </div>
  );
}

function Table(props: { readonly figure: Figure; readonly title: string }) {
  const sheet = useSheet();
  const show = (cell: number | string | null | undefined, { measure }: FigureColumn): string => {
    if (cell === null || cell === undefined) return "–";
    return typeof cell === "string" || measure === "text"
      ? String(cell)
      : showQuantity(cell, measure, sheet.showOptions());
  };
  const bars = createMemo(() =>
    props.figure.columns.map((column, index) => (column.bar ? barsOf(props.figure, index) : null)),
  );
  return (
    <table>
      <caption class="unseen">{props.title}</caption>
      <thead>
        <tr>
          <For each={props.figure.columns}>{(column) => <th scope="col">{column.label}</th>}</For>
        </tr>
      </thead>
      <tbody>
        <For each={props.figure.rows}>
          {(row, index) => (
            <tr>
              <th scope="row">{show(row[0], props.figure.columns[0] ?? { label: "", measure: "text" })}</th>
              <For each={props.figure.columns.slice(1)}>
                {(column, at) => (
                  <td>
                    {show(row[at() + 1], column)}
                    <Show when={bars()[at() + 1]?.[index()]}>
                      {(share) => <i class="bar" style={{ width: `${100 * share()}%` }} aria-hidden="true" />}
                    </Show>
                  </td>
                )}
              </For>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

function One(props: { readonly figure: Figure; readonly title: string }) {
  const sheet = useSheet();
  return (
    <>
      <p>{props.figure.says}</p>
      <Show when={props.figure.chart} fallback={<Table figure={props.figure} title={props.title} />}>
        {(chart) => (
          <>
            <Key chart={chart()} />
            <Chart chart={chart()} words={figureWords(props.figure, sheet.showOptions())} />
            <details>
              <summary>The same as a table</summary>
              <Table figure={props.figure} title={props.title} />
            </details>
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
          <h3>{props.of.title}</h3>
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
