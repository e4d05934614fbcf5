// Would a bigger tank help? A button on a tank's card, and under it the season run with that tank smaller and bigger.

import { createMemo, createUniqueId, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import {
  type SizeCurve as Curve,
  kneeWords,
  type SizeMark,
  type SizePoint,
  sizeChart,
  sizeTable,
  sizeWords,
} from "../../scene/size-curve.ts";
import type { MeasureName } from "../../units/measures.ts";
import { showQuantity, unitFor } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { createElementWidth } from "./element-width.ts";
import type { SizeStudy } from "./sizes.ts";

/** Until it is measured. */
const WIDTH = 360;
const HEIGHT = 170;
/** Over the chart the words of both marks, a row each; under it the sizes. */
const ABOVE = 42;
const BELOW = 26;

function Mark(props: {
  readonly mark: SizeMark;
  readonly words: string;
  readonly up: number;
  readonly name: "today" | "knee";
}) {
  return (
    <g class={props.name}>
      <line x1={props.mark.x} x2={props.mark.x} y1={-props.up} y2={HEIGHT} />
      <text
        x={props.mark.x + (props.mark.anchor === "start" ? 5 : -5)}
        y={-props.up + 11}
        text-anchor={props.mark.anchor}
      >
        {props.words}
      </text>
      <circle cx={props.mark.x} cy={props.mark.y} r="5" />
    </g>
  );
}

function Chart(props: { readonly curve: Curve; readonly words: string }) {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(WIDTH);
  const show = (si: number, measure: MeasureName) => showQuantity(si, measure, sheet.showOptions());
  const chart = createMemo(() =>
    sizeChart(props.curve, {
      width: width(),
      height: HEIGHT,
      unit: unitFor("volume", sheet.showOptions().units),
    }),
  );
  return (
    <div ref={watch}>
      <svg viewBox={`0 ${-ABOVE} ${width()} ${HEIGHT + ABOVE + BELOW}`} role="img" aria-label={props.words}>
        <For each={chart().up}>
          {(tick) => <line class="grid" x1="0" x2={width()} y1={tick.at} y2={tick.at} />}
        </For>
        <path class="line" d={chart().line} />
        <For each={chart().dots}>{(dot) => <circle class="dot" cx={dot.x} cy={dot.y} r="2.5" />}</For>
        <For each={chart().up}>
          {(tick) => (
            <text x="0" y={tick.at - 4}>
              {show(tick.value, "share")}
            </text>
          )}
        </For>
        <For each={chart().across.slice(1)}>
          {(tick) => (
            <text x={tick.at} y={HEIGHT + 19} text-anchor="middle">
              {show(tick.value, "volume")}
            </text>
          )}
        </For>
        <Show when={chart().knee}>
          {(mark) => (
            <Mark
              name="knee"
              mark={mark()}
              up={19}
              words={`past ${show(mark().volume, "volume")} little more`}
            />
          )}
        </Show>
        <Show when={chart().today}>
          {(mark) => (
            <Mark name="today" mark={mark()} up={38} words={`today ${show(mark().volume, "volume")}`} />
          )}
        </Show>
      </svg>
    </div>
  );
}

function Table(props: { readonly curve: Curve }) {
  const sheet = useSheet();
  const show = (si: number | null, measure: MeasureName) =>
    si === null ? "–" : showQuantity(si, measure, sheet.showOptions());
  const note = (point: SizePoint) =>
    point.multiple === 1 ? " (today)" : point.multiple === props.curve.knee ? " (little more past this)" : "";
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Holds</th>
          <th scope="col">Thirst met</th>
          <th scope="col">Short days a season</th>
          <th scope="col">Spills a season</th>
        </tr>
      </thead>
      <tbody>
        <For each={sizeTable(props.curve)}>
          {(point) => (
            <tr>
              <th scope="row">
                {show(point.volume, "volume")}
                {note(point)}
              </th>
              <td>{show(point.shareMet, "share")}</td>
              <td>{show(point.daysShort, "count")}</td>
              <td>{show(point.spill, "volume")}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

function Answer(props: { readonly study: SizeStudy }) {
  const sheet = useSheet();
  const words = () => sizeWords(props.study.curve, sheet.showOptions());
  const knee = () =>
    props.study.state === "working" ? null : kneeWords(props.study.curve, sheet.showOptions());
  const spoken = () => ["The thirst met against what this tank holds.", ...words(), knee() ?? ""].join(" ");
  const isBusy = () => props.study.state === "working" || props.study.state === "old";
  return (
    <div classList={{ old: props.study.state === "old" }} aria-busy={isBusy()}>
      <p class="verdict" role="status">
        <Show
          when={props.study.state !== "failed"}
          fallback={<span class="wrong">{props.study.reason}</span>}
        >
          {knee() ?? "Running the season with other sizes …"}
        </Show>
      </p>
      <Show when={isBusy()}>
        <p class="aside">
          <span aria-hidden="true">
            {props.study.done} of {props.study.of} sizes run.{" "}
          </span>
          <button type="button" class="ask" onClick={() => sheet.sizes.close()}>
            Stop
          </button>
        </p>
      </Show>
      <Show when={props.study.curve.points.length > 0}>
        <For each={words()}>{(sentence) => <p>{sentence}</p>}</For>
        <Chart curve={props.study.curve} words={spoken()} />
        <details>
          <summary>The same as a table</summary>
          <Table curve={props.study.curve} />
        </details>
        <p class="aside">
          The whole season, run anew for every size over the same record: more tanks alike, each as high as
          now, all else as it is.
        </p>
      </Show>
    </div>
  );
}

/** The button, on a card whose kind offers it and that serves somebody, and the answer under it. */
export function SizeCurve(props: { readonly card: Card }) {
  const sheet = useSheet();
  const id = createUniqueId();
  const offer = () => sheet.kinds[props.card.kind]?.sizes;
  const isOffered = () => {
    const { where } = offer() ?? {};
    return where !== undefined && sheet.result(`${props.card.id}.${where}`)?.state !== "none";
  };
  const study = () => {
    const now = sheet.sizes.study();
    return now?.card === props.card.id ? now : null;
  };
  return (
    <Show when={isOffered()}>
      <section class="sizes">
        <button
          type="button"
          class="ask"
          aria-expanded={study() !== null}
          aria-controls={id}
          onClick={() => (study() ? sheet.sizes.close() : sheet.sizes.ask(props.card.id))}
        >
          {offer()?.ask}
        </button>
        <div id={id} class="chart">
          <Show when={study()}>{(now) => <Answer study={now()} />}</Show>
        </div>
      </section>
    </Show>
  );
}
