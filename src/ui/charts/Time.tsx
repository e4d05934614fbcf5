// The record: short days season by season, and the water of the season that is looked at.

import { Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import { Seasons } from "./Seasons.tsx";
import { YearWater } from "./YearWater.tsx";
import { createYearShown } from "./year-shown.ts";

export function Time() {
  const sheet = useSheet();
  const shown = createYearShown(sheet);
  return (
    <Show when={sheet.stored()}>
      {(series) => (
        <div class="time" classList={{ old: sheet.working() }}>
          <Show when={shown.seasons().length > 0}>
            <Seasons shown={shown} />
          </Show>
          <Show when={shown.span()}>
            {(span) => <YearWater shown={shown} series={series()} span={span()} />}
          </Show>
        </div>
      )}
    </Show>
  );
}
