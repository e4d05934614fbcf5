// A bed's need through a usual year, drawn, with its crop curve and the same as a table.

import { createMemo, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { shownIn } from "../../graph/readers.ts";
import type { ThroughYear as Year } from "../../kinds/bed/year.ts";
import { neediest, thirstPlot, yearPlot, yearTable } from "../../scene/year-curve.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { Chart, TableBehind } from "./Chart.tsx";

const HEIGHT = 110;
const STRIP = 46;
const FIGURES = 2;

function Drawing(props: { readonly year: Year; readonly words: string }) {
  const sheet = useSheet();
  return (
    <>
      <Chart
        plot={(width) => yearPlot(props.year.weeks, width, sheet.showOptions())}
        words={props.words}
        height={HEIGHT}
        margin={{ above: 14 }}
      />
      <Chart
        plot={(width) => thirstPlot(props.year.weeks, width)}
        words="How thirsty the crop is beside short grass, week by week; the table has the figures"
        height={STRIP}
        margin={{ above: 4, below: 4 }}
      />
    </>
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
        <figure class="through">
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
          <TableBehind table={yearTable(held().months, sheet.showOptions())} />
        </figure>
      )}
    </Show>
  );
}
