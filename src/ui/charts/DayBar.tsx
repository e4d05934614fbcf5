// Under the drawing: the day that it shows, a slider through its year, and Play.

import { For, Show } from "solid-js";
import { calendarDate } from "../../units/calendar.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";
import type { DayPlayer } from "./day-player.ts";

function dayText(day: number): string {
  const { month, day: ofMonth } = calendarDate(day);
  return `${ofMonth}\u00a0${SHORT_MONTHS[month - 1] ?? ""}`;
}

export function DayBar(props: { readonly player: DayPlayer; readonly dipped: boolean }) {
  const shown = () => props.player.day();
  return (
    <div class="day-bar width">
      <button type="button" class="play" onClick={() => props.player.toggle()}>
        {props.player.playing() ? "Pause" : "Play"}
      </button>
      <input
        type="range"
        aria-label="Day of the record that the drawing shows"
        aria-valuetext={`${dayText(props.player.place())} ${props.player.year()}`}
        min={props.player.ends().from}
        max={props.player.ends().to}
        step="1"
        value={props.player.place()}
        onInput={(event) => props.player.choose(event.currentTarget.valueAsNumber)}
      />
      <span class="date">
        <Show when={shown() !== null} fallback="as dipped">
          {dayText(props.player.place())}
        </Show>
      </span>
      <label>
        <span class="unseen">Year</span>
        <select
          value={props.player.year()}
          onChange={(event) => props.player.chooseYear(Number(event.currentTarget.value))}
        >
          <For each={props.player.years()}>{(year) => <option value={year}>{year}</option>}</For>
        </select>
      </label>
      <Show when={props.dipped && shown() !== null}>
        <button type="button" class="tool" onClick={() => props.player.choose(null)}>
          As dipped today
        </button>
      </Show>
    </div>
  );
}
