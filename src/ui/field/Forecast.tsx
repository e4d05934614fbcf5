// What one expects of the next seven days: rain, its chance and heat, a button a day; kept on this device.

import { createSignal, For, Index, Show } from "solid-js";
import { type Expected, expectedAsked, isExpectable } from "../../telling/from-today.ts";
import { weekday } from "../../units/calendar.ts";
import { SHORT_WEEKDAYS } from "../../units/calendar-names.ts";
import type { MeasureName } from "../../units/measures.ts";
import { readQuantity } from "../../units/read.ts";
import { displayParts, showQuantity, unitFor, unitLabel } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { dateWords, dayAndMonth } from "../words.ts";
import type { Lasting } from "./lasting.ts";

const DAYS = 7;
const NOTHING: Expected = { rain: null, chance: null, highest: null };

type Part = {
  readonly name: keyof Expected;
  readonly label: string;
  readonly measure: MeasureName;
  /** What stands in the field while nothing is said: where past years tell odds, and where they do not. */
  readonly unsaid: string;
  readonly plainly: string;
};

const PARTS: readonly Part[] = [
  { name: "rain", label: "Rain", measure: "rain", unsaid: "as in past years", plainly: "as usual" },
  { name: "chance", label: "Its chance", measure: "share", unsaid: "50 %", plainly: "certain" },
  {
    name: "highest",
    label: "Hottest",
    measure: "temperature",
    unsaid: "as in past years",
    plainly: "as usual",
  },
];

function Field(props: {
  readonly part: Part;
  readonly isOdds: boolean;
  readonly value: number | null;
  readonly onValue: (value: number | null) => void;
}) {
  const sheet = useSheet();
  const [wrong, setWrong] = createSignal("");
  const shown = () =>
    props.value === null ? "" : showQuantity(props.value, props.part.measure, sheet.showOptions());
  const asked = (): string =>
    props.part.name === "rain"
      ? expectedAsked(props.value, (si, measure) => showQuantity(si, measure, sheet.showOptions()))
      : "";
  const enter = (field: HTMLInputElement): void => {
    const text = field.value.trim();
    if (text === "") {
      setWrong("");
      props.onValue(null);
      return;
    }
    const { measure, name } = props.part;
    const unit = unitFor(measure, sheet.worksheet().units);
    const read = readQuantity(text, { ...sheet.readOptions(), measure, defaultUnit: unit });
    if (!read.ok) return void setWrong(read.message);
    if (!isExpectable(name, read.si)) return void setWrong("No weather is like that.");
    setWrong("");
    props.onValue(read.si);
    field.value = shown();
  };
  return (
    <label class="expect-field">
      <span>{props.part.label}</span>
      <input
        type="text"
        inputmode="decimal"
        placeholder={props.isOdds ? props.part.unsaid : props.part.plainly}
        value={shown()}
        aria-invalid={wrong() !== ""}
        onChange={(event) => enter(event.currentTarget)}
      />
      <Show when={wrong() || asked()}>{(text) => <em role="alert">{text()}</em>}</Show>
    </label>
  );
}

type Asked = { readonly lasting: Lasting; readonly isOdds: boolean };

function Editor(props: Asked & { readonly day: number }) {
  const sheet = useSheet();
  const said = () => props.lasting.expected()[props.day] ?? NOTHING;
  const set = (name: keyof Expected, value: number | null): void => {
    const next = { ...said(), [name]: value };
    props.lasting.expect(props.day, next.rain === null && next.highest === null ? null : next);
  };
  return (
    <fieldset class="expect-editor">
      <legend>{dateWords(props.day, sheet.showOptions().locale)}</legend>
      <For each={PARTS}>
        {(part) => (
          <Field
            part={part}
            isOdds={props.isOdds}
            value={said()[part.name]}
            onValue={(value) => set(part.name, value)}
          />
        )}
      </For>
      <Show when={props.lasting.expected()[props.day]}>
        <button type="button" onClick={() => props.lasting.expect(props.day, null)}>
          Expect nothing of this day
        </button>
      </Show>
    </fieldset>
  );
}

export function ForecastDays(props: Asked) {
  const sheet = useSheet();
  const [open, setOpen] = createSignal<number | null>(null);
  const days = () => Array.from({ length: DAYS }, (_, day) => props.lasting.today() + day);
  const unit = () => unitFor("rain", sheet.worksheet().units);
  const rainOn = (day: number): string => {
    const rain = props.lasting.expected()[day]?.rain ?? null;
    return rain === null ? "–" : displayParts(rain, "rain", sheet.showOptions()).number;
  };
  /** What a glance sees by the place of it. */
  const spoken = (day: number): string => {
    const expected = props.lasting.expected()[day];
    const rain = expected?.rain ?? null;
    const words =
      rain === null ? "nothing expected" : `${showQuantity(rain, "rain", sheet.showOptions())} expected`;
    return `${unitLabel(unit())}, ${dayAndMonth(day, sheet.showOptions().locale)}: ${words}`;
  };
  return (
    <section class="expect" aria-label="Rain you expect">
      <h2>
        Rain you expect, {unitLabel(unit())}{" "}
        <Show when={Object.keys(props.lasting.expected()).length > 0}>
          <span>shaded above</span>
        </Show>
      </h2>
      <div class="expect-days">
        <Index each={days()}>
          {(day) => (
            <button
              type="button"
              aria-expanded={open() === day()}
              classList={{ said: props.lasting.expected()[day()] !== undefined }}
              onClick={() => setOpen(open() === day() ? null : day())}
            >
              <small>{SHORT_WEEKDAYS[weekday(day()) - 1]}</small>
              <b>{rainOn(day())}</b>
              <span class="unseen">{spoken(day())}</span>
            </button>
          )}
        </Index>
      </div>
      <Show when={open()} keyed>
        {(day) => <Editor lasting={props.lasting} isOdds={props.isOdds} day={day} />}
      </Show>
    </section>
  );
}
