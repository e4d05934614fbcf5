// A day of the year by month and number, for thumbs.

import { For, Show } from "solid-js";
import { daysInMonth, parseMonthDay } from "../../units/calendar.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";

const LEAP_YEAR = 2000;

type Props = {
  readonly id: string;
  readonly label: string;
  /** `MM-DD`, or null for none. */
  readonly value: string | null;
  readonly optional: boolean;
  /** What no date is called. */
  readonly none?: string;
  readonly onPick: (value: string | null) => void;
};

const two = (value: number): string => String(value).padStart(2, "0");

export function DayPicker(props: Props) {
  const parts = () => (props.value ? parseMonthDay(props.value) : null);
  const pick = (month: number, day: number) => {
    const last = daysInMonth(LEAP_YEAR, month);
    props.onPick(`${two(month)}-${two(Math.min(Math.max(1, day || 1), last))}`);
  };
  return (
    <span class="day">
      <Show when={parts()}>
        {(date) => (
          <input
            aria-label={`${props.label}, day of the month`}
            inputmode="numeric"
            value={date().day}
            onChange={(event) => pick(date().month, Number.parseInt(event.currentTarget.value, 10))}
          />
        )}
      </Show>
      <select
        id={props.id}
        aria-label={`${props.label}, month`}
        value={parts()?.month ?? ""}
        onChange={(event) =>
          event.currentTarget.value
            ? pick(Number(event.currentTarget.value), parts()?.day ?? 1)
            : props.onPick(null)
        }
      >
        <Show when={props.optional || !parts()}>
          <option value="">{props.none ?? "no date"}</option>
        </Show>
        <For each={SHORT_MONTHS}>{(name, index) => <option value={index() + 1}>{name}</option>}</For>
      </select>
    </span>
  );
}
