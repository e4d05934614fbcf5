// A chart as `scene/plot.ts` draws it, as wide as its place; what is laid over it gets its frame. Beside it its table.

import { type Accessor, createMemo, createSignal, For, Index, type JSX, Show } from "solid-js";
import { type DrawnPlot, drawPlot, type Plot, type PlotTable } from "../../scene/plot.ts";
import type { Frame } from "../../scene/plot-marks.ts";
import { createElementWidth } from "./element-width.ts";

/** Until it is measured. */
const WIDTH = 360;
const SIZE = 13;

/** Over the field the words of marks; under it those of the ticks; right of it room for what overhangs [px]. */
export type Margin = { readonly above?: number; readonly below?: number; readonly right?: number };

function Ticks(props: { readonly drawn: DrawnPlot }) {
  const frame = () => props.drawn.frame;
  return (
    <>
      <Index each={props.drawn.up}>
        {(tick) => <line class="plot-grid" x1="0" x2={frame().width} y1={tick().y} y2={tick().y} />}
      </Index>
      <line class="plot-foot" x1="0" x2={frame().width} y1={frame().height} y2={frame().height} />
    </>
  );
}

function TickWords(props: { readonly drawn: DrawnPlot }) {
  return (
    <>
      <Index each={props.drawn.up}>
        {(tick) => (
          <text class="plot-tick" x={tick().x} y={tick().words} text-anchor={tick().anchor}>
            {tick().label}
          </text>
        )}
      </Index>
      <Index each={props.drawn.across}>
        {(tick) => (
          <text
            class="plot-tick"
            x={tick().x}
            y={props.drawn.frame.height + 17}
            text-anchor={tick().anchor as "middle"}
          >
            {tick().label}
          </text>
        )}
      </Index>
    </>
  );
}

function Marks(props: { readonly drawn: DrawnPlot }) {
  const height = () => props.drawn.frame.height;
  return (
    <Index each={props.drawn.marks}>
      {(at) => (
        <g class={`plot-mark ${at().mark.tone}`}>
          <Show when={at().y === null || at().mark.stem}>
            <line
              classList={{ stem: at().mark.stem === true }}
              x1={at().x}
              x2={at().x}
              y1={at().y ?? -4}
              y2={height()}
            />
          </Show>
          <Show when={at().leader}>{(d) => <path class="leader" d={d()} />}</Show>
          <Show when={at().y !== null && at().mark.dot !== "none"}>
            <circle classList={{ hollow: at().mark.dot === "hollow" }} cx={at().x} cy={at().y ?? 0} r="5" />
          </Show>
          <text x={at().words.x} y={at().words.y} text-anchor="middle">
            {at().mark.label}
          </text>
        </g>
      )}
    </Index>
  );
}

/**
 * A chart with its words for those who cannot look.
 *
 * @param props.plot what is drawn; a function of the width where ticks follow it
 * @param props.words what it shows, in a sentence or two
 * @param props.height of its field [px]
 */
export function Chart(props: {
  readonly plot: Plot | ((width: number) => Plot);
  readonly words: string;
  readonly height: number;
  readonly margin?: Margin;
  /** The scale's words stand at the right, where lines all begin at the left. */
  readonly scaleAtEnd?: boolean;
  readonly table?: PlotTable;
  /** A picture, unless what is laid over it answers to keys. */
  readonly role?: "img" | "group";
  /** Made once; what is in it follows the frame. */
  readonly children?: (frame: Accessor<Frame>) => JSX.Element;
}) {
  const { width, watch } = createElementWidth(WIDTH);
  const drawn = createMemo(() => {
    const plot = typeof props.plot === "function" ? props.plot(width()) : props.plot;
    const field = {
      width: width(),
      height: props.height,
      right: props.margin?.right ?? 0,
      scaleAtEnd: props.scaleAtEnd === true,
    };
    return drawPlot(plot, field, SIZE);
  });
  const above = () => props.margin?.above ?? 6;
  const tall = () => props.height + above() + (props.margin?.below ?? 22);
  return (
    <div class="plot" ref={watch}>
      <svg
        viewBox={`0 ${-above()} ${width()} ${tall()}`}
        height={tall()}
        role={props.role ?? (props.children ? "group" : "img")}
        aria-label={props.words}
      >
        <Ticks drawn={drawn()} />
        <Index each={drawn().shapes}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
        <TickWords drawn={drawn()} />
        <Marks drawn={drawn()} />
        {props.children?.(() => drawn().frame)}
      </svg>
      <Show when={props.table}>{(table) => <TableBehind table={table()} />}</Show>
    </div>
  );
}

/** Rows are made when somebody opens it; Escape folds it before it does anything else. */
export function TableBehind(props: { readonly table: PlotTable; readonly more?: PlotTable | null }) {
  const [open, setOpen] = createSignal(false);
  const onKey = (event: KeyboardEvent & { readonly currentTarget: HTMLDetailsElement }): void => {
    if (event.key !== "Escape" || !open()) return;
    event.preventDefault();
    event.stopPropagation();
    event.currentTarget.open = false;
    event.currentTarget.querySelector("summary")?.focus();
  };
  return (
    <details class="plot-table" onToggle={(event) => setOpen(event.currentTarget.open)} onKeyDown={onKey}>
      <summary>As a table</summary>
      <Show when={open()}>
        <PlainTable table={props.table} />
        <Show when={props.more}>
          {(more) => (
            <>
              <p aria-hidden="true">{more().title}</p>
              <PlainTable table={more()} />
            </>
          )}
        </Show>
      </Show>
    </details>
  );
}

/** The table itself, with a bar under the numbers of a column that is compared by eye. */
export function PlainTable(props: { readonly table: PlotTable }) {
  const bar = (column: number, row: number) => props.table.bars?.[column]?.[row] ?? null;
  return (
    <table>
      <caption class="unseen">{props.table.title}</caption>
      <thead>
        <tr>
          <For each={props.table.head}>{(label) => <th scope="col">{label}</th>}</For>
        </tr>
      </thead>
      <tbody>
        <For each={props.table.rows}>
          {(cells, row) => (
            <tr>
              <th scope="row">{cells[0]}</th>
              <For each={cells.slice(1)}>
                {(cell, column) => (
                  <td>
                    {cell}
                    <Show when={bar(column() + 1, row())}>
                      {(share) => (
                        <i class="plot-bar" style={{ width: `${100 * share()}%` }} aria-hidden="true" />
                      )}
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
