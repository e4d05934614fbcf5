// The readings that a file allows, side by side with the yearly rain of each; and the figure that betrays a mistake.

import { createUniqueId, For, type JSX, Show } from "solid-js";
import { filledWith } from "../../graph/fill.ts";
import type { DrierYears, RainOpen, RainTold } from "./rain-import.ts";

/** One open reading: the likeliest is chosen beforehand, any other is one touch away. */
export function OpenReading(props: { readonly open: RainOpen; readonly onChoose: (value: string) => void }) {
  const name = createUniqueId();
  return (
    <fieldset class="reading">
      <legend>{props.open.text}</legend>
      <Show
        when={props.open.options.length > 0}
        fallback={
          <input
            class="measure"
            aria-label={props.open.text}
            value={props.open.value}
            onChange={(event) => props.onChoose(event.currentTarget.value)}
          />
        }
      >
        <For each={props.open.options}>
          {({ value, label, yearly }) => (
            <label classList={{ chosen: value === props.open.value }}>
              <input
                type="radio"
                name={name}
                value={value}
                checked={value === props.open.value}
                onChange={() => props.onChoose(value)}
              />
              <span>{label}</span>
              <Show when={yearly}>
                <strong>{yearly} a year</strong>
              </Show>
            </label>
          )}
        </For>
      </Show>
    </fieldset>
  );
}

/** What a record of few years cannot tell, and what it would be with less rain. */
export function Drier(props: { readonly told: RainTold }) {
  return (
    <Show when={props.told.few}>
      <section class="drier" aria-label="Drier years">
        <p>{props.told.few}</p>
        <ul>
          <For each={props.told.drier}>
            {({ name, yearly }) => (
              <li>
                {name}: <strong>{yearly}</strong> a year
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

/** The worst season of the record in use as it is and with less rain: like beside like. */
export function DrierSeasons(props: { readonly years: DrierYears }) {
  return (
    <Show when={props.years.length > 0}>
      <section class="drier" aria-label="The same record with less rain">
        <h2>The same record with less rain</h2>
        <p>The worst season of each:</p>
        <ul>
          <For each={props.years}>
            {({ name, rain, daysShort, shareMet }) => (
              <li>
                {name}
                {rain ? `, ${rain} a year` : ""}
                {daysShort ? filledWith(": {} days short", () => daysShort) : ""}
                {shareMet ? `, ${shareMet} of what the beds would use` : ""}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

/** The mean year beside the button that takes the file. */
export function TakeBar(props: {
  readonly told: RainTold | null;
  readonly onTake: () => void;
  readonly children?: JSX.Element;
}) {
  const isDoubtful = () => (props.told?.doubts.length ?? 0) > 0;
  return (
    <div class="take" classList={{ doubtful: isDoubtful() }}>
      <Show when={props.told}>
        {(told) => (
          <p>
            {told().lead}
            <strong class="figure">{told().yearly}</strong>
            <span>{told().wet}</span>
            <For each={told().doubts}>
              {(doubt) => (
                <span class="wrong" role="alert">
                  {doubt}
                </span>
              )}
            </For>
          </p>
        )}
      </Show>
      <div class="options">
        <button type="button" class="button" onClick={() => props.onTake()}>
          {isDoubtful() ? "Take it anyway" : "Take it"}
        </button>
        {props.children}
      </div>
    </div>
  );
}
