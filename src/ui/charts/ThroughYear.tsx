// A bed's need through a usual year, drawn, with its crop curve and the same as a table.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { shownIn } from "../../graph/readers.ts";
import type { ThroughYear as Year } from "../../kinds/bed/year.ts";
import { neediest, yearChart, yearTable } from "../../scene/year-curve.ts";
import { showNumber, showQuantity, unitFor } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { createElementWidth } from "./element-width.ts";

/** Until it is measured. */
const WIDTH = 360;
const HEIGHT = 110;
const STRIP = 46;
const FIGURES = 2;

function Drawing(props: { readonly year: Year; readonly words: string }) {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(WIDTH);
  const chart = createMemo(() =>
    yearChart(props.year.weeks, {
      width: width(),
      height: HEIGHT,
      strip: STRIP,
      unit: unitFor("volume", sheet.showOptions().units),
    }),
  );
  return (
    <div ref={watch}>
      <svg viewBox={`0 -12 ${width()} ${HEIGHT + 34}`} role="img" aria-label={props.words}>
        <path class="use" d={chart().use} />
        <path class="need" d={chart().need} />
        <For each={chart().up}>
          {(tick) => (
            <>
              <line class="grid" x1="0" x2={width()} y1={tick.at} y2={tick.at} />
              <text x="0" y={tick.at - 3}>
                {showQuantity(tick.value, "volume", sheet.showOptions())}
              </text>
            </>
          )}
        </For>
        <For each={chart().across}>
          {(tick) => (
            <text x={tick.at} y={HEIGHT + 17}>
              {tick.label}
            </text>
          )}
        </For>
      </svg>
      <svg
        class="strip"
        viewBox={`0 -2 ${width()} ${STRIP + 4}`}
        role="img"
        aria-label="How thirsty the crop is beside short grass, week by week; the table has the figures"
      >
        <line class="grid" x1="0" x2={width()} y1={chart().grass} y2={chart().grass} />
        <path class="kc" d={chart().kc} />
        <text x="0" y={chart().grass - 3}>
          as thirsty as grass
        </text>
      </svg>
    </div>
  );
}

function Table(props: { readonly year: Year }) {
  const sheet = useSheet();
  const show = (si: number) => showQuantity(si, "volume", { ...sheet.showOptions(), figures: FIGURES });
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">A day in</th>
          <th scope="col">Would use</th>
          <th scope="col">Rain brings</th>
          <th scope="col">Needs</th>
          <th scope="col">Thirst, grass = 1</th>
        </tr>
      </thead>
      <tbody>
        <For each={yearTable(props.year.months).filter(({ use }) => use > 0)}>
          {(row) => (
            <tr>
              <th scope="row">{row.label}</th>
              <td>{show(row.use)}</td>
              <td>{show(row.rain)}</td>
              <td>{show(row.need)}</td>
              <td>{row.kc === null ? "–" : showNumber(row.kc, FIGURES, sheet.showOptions().locale)}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

/** The chart of a card whose kind has one. */
export function ThroughYear(props: { readonly card: Card; readonly row: string }) {
  const sheet = useSheet();
  const year = createMemo((): Year | null => {
    const result = sheet.result(`${props.card.id}.${props.row}`);
    const value = shownIn(result);
    return value as Year | null;
  });
  const words = (held: Year): string => {
    const peak = neediest(held.months);
    if (!peak) return "Through a usual year it needs no water from you.";
    return `Needs most in ${peak.month}: ${showQuantity(peak.need, "volume", { ...sheet.showOptions(), figures: FIGURES })} a day in a usual year.`;
  };
  return (
    <Show when={year()}>
      {(held) => (
        <figure class="chart through">
          <figcaption>{words(held())}</figcaption>
          <Drawing year={held()} words={words(held())} />
          <p class="keys">
            <span>
              <i class="need" aria-hidden="true" /> you give
            </span>
            <span>
              <i class="rain" aria-hidden="true" /> rain brings
            </span>
            <span>
              <i class="kc" aria-hidden="true" /> how thirsty the crop is
            </span>
          </p>
          <details>
            <summary>The same as a table</summary>
            <Table year={held()} />
          </details>
        </figure>
      )}
    </Show>
  );
}
