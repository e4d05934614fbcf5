// Water in the tanks over the record, with the short days marked along the foot; the same as a table.

import { createMemo, createSignal, For, Show } from "solid-js";
import {
  type StoredSeries,
  storedChart,
  storedTable,
  yearsOf,
  yearWindow,
} from "../../scene/stored-water.ts";
import { showQuantity, unitFor } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { createElementWidth } from "./element-width.ts";

/** Until it is measured. */
const WIDTH = 1100;
const HEIGHT = 190;

function Drawing(props: {
  readonly series: StoredSeries;
  readonly year: number | null;
  readonly facts: string;
}) {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(WIDTH);
  const span = () =>
    props.year === null
      ? { from: props.series.firstDay, to: props.series.firstDay + props.series.stored.length - 1 }
      : yearWindow(props.series, props.year);
  const chart = createMemo(() =>
    storedChart(props.series, {
      ...span(),
      width: width(),
      height: HEIGHT,
      unit: unitFor("volume", sheet.showOptions().units),
    }),
  );
  return (
    <div ref={watch}>
      <svg viewBox={`0 -14 ${width()} ${HEIGHT + 40}`} role="img" aria-label={props.facts}>
        <path class="area" d={chart().area} />
        <path class="line" d={chart().line} />
        <For each={chart().up}>
          {(tick) => <line class="grid" x1="0" x2={width()} y1={tick.at} y2={tick.at} />}
        </For>
        <For each={chart().short}>
          {(run) => <rect class="short" x={run.x} width={run.width} y={HEIGHT - 7} height="7" />}
        </For>
        <For each={chart().across}>
          {(tick) => (
            <text x={tick.at} y={HEIGHT + 18}>
              {tick.label}
            </text>
          )}
        </For>
        <For each={chart().up}>
          {(tick) => (
            <text x="0" y={tick.at - 4}>
              {showQuantity(tick.value, "volume", sheet.showOptions())}
            </text>
          )}
        </For>
      </svg>
    </div>
  );
}

function Table(props: { readonly series: StoredSeries }) {
  const sheet = useSheet();
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Year</th>
          <th scope="col">Lowest evening</th>
          <th scope="col">On</th>
          <th scope="col">Short days</th>
        </tr>
      </thead>
      <tbody>
        <For each={storedTable(props.series)}>
          {(row) => (
            <tr>
              <th scope="row">{row.year}</th>
              <td>{showQuantity(row.lowest, "volume", sheet.showOptions())}</td>
              <td>{row.lowestOn}</td>
              <td>{row.short}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

export function StoredWater() {
  const sheet = useSheet();
  const [year, setYear] = createSignal<number | null>(null);
  const facts = (series: StoredSeries) => {
    const rows = storedTable(series);
    const short = rows.filter((row) => row.short > 0).length;
    return `Water in all tanks, day by day. Of ${rows.length} years on the record, ${short} had days on which a bed was short.`;
  };
  return (
    <Show when={sheet.stored()}>
      {(series) => (
        <figure class="chart">
          <div class="width" classList={{ old: sheet.working() }}>
            <header>
              <h2>Water in the tanks</h2>
              <span class="key">
                <i aria-hidden="true" /> a bed is short
              </span>
              <label>
                <span class="unseen">Show</span>
                <select
                  value={year() ?? ""}
                  onChange={(event) =>
                    setYear(event.currentTarget.value ? Number(event.currentTarget.value) : null)
                  }
                >
                  <option value="">the whole record</option>
                  <For each={yearsOf(series())}>{(one) => <option value={one}>{one}</option>}</For>
                </select>
              </label>
            </header>
            <Drawing series={series()} year={year()} facts={facts(series())} />
            <details>
              <summary>The same as a table</summary>
              <Table series={series()} />
            </details>
          </div>
        </figure>
      )}
    </Show>
  );
}
