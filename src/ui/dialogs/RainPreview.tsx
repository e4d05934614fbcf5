// A rain record before it is taken: the top of its table, what was assumed and done, and its years with their gaps.

import { For, type JSX, Show } from "solid-js";
import { wholeDays } from "../../telling/words/lists.ts";
import { useSheet } from "../sheet.ts";
import { Drier, OpenReading } from "./RainReadings.tsx";
import type { RainAssumption, RainPreview, StripYear } from "./rain-import.ts";

function Choice(props: { readonly choice: RainAssumption; readonly onChoose: (value: string) => void }) {
  const listed = () => props.choice.options.some(({ value }) => value === props.choice.value);
  return (
    <label class="row">
      <span class="label">{props.choice.text}</span>
      <span class="value">
        <Show
          when={props.choice.options.length > 0}
          fallback={
            <input
              class="measure"
              placeholder="none"
              value={props.choice.value}
              onChange={(event) => props.onChoose(event.currentTarget.value)}
            />
          }
        >
          <select
            value={props.choice.value}
            onChange={(event) => props.onChoose(event.currentTarget.value)}
            aria-label={props.choice.text}
          >
            <Show when={!listed()}>
              <option value={props.choice.value}>{props.choice.value || "not told"}</option>
            </Show>
            <For each={props.choice.options}>
              {({ value, label }) => (
                <option value={value} selected={value === props.choice.value}>
                  {label}
                </option>
              )}
            </For>
          </select>
        </Show>
      </span>
    </label>
  );
}

function Head(props: { readonly preview: RainPreview }) {
  return (
    <Show when={props.preview.rows.length > 0}>
      <section class="sideways" tabindex="0" aria-label="The first rows of the file">
        <table>
          <thead>
            <tr>
              <For each={props.preview.header}>
                {(cell, at) => (
                  <th scope="col" classList={{ taken: props.preview.taken[at()] }}>
                    {cell}
                  </th>
                )}
              </For>
            </tr>
          </thead>
          <tbody>
            <For each={props.preview.rows}>
              {(row) => (
                <tr>
                  <For each={row}>
                    {(cell, at) => <td classList={{ taken: props.preview.taken[at()] }}>{cell}</td>}
                  </For>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}

const CELL = 12;
// A single year drawn as wide as the page would stand taller than a screen.
const LEAST_YEARS = 4;
const CARD_IN_LETTERS = 26;
/** Width of the four figures of a year, in heights of a letter. */
const FIGURES_WIDE = 2.5;

function Strip(props: { readonly years: readonly StripYear[] }) {
  const missing = () => props.years.reduce((sum, year) => sum + year.missing, 0);
  const width = () => props.years.length * CELL;
  const paper = () => Math.max(props.years.length, LEAST_YEARS) * CELL;
  // However many years share the width of a card, their names stay as large as its words.
  const letter = () => Math.max(11, paper() / CARD_IN_LETTERS);
  const name = () => FIGURES_WIDE * letter();
  const step = () => (props.years.length > 30 ? 20 : 10);
  const isLast = (at: number): boolean => at > 2 && at === props.years.length - 1;
  const fits = (at: number): boolean => at === 0 || at * CELL + name() <= paper();
  // The last year is named where there is room between it and the one named before, others where they end on the paper.
  const isNamed = (at: number): boolean => {
    const past = at % step();
    if (isLast(at)) return past === 0 || !fits(at - past) || (past + 1) * CELL > 2 * name() + CELL;
    return past === 0 && fits(at);
  };
  return (
    <svg
      class="strip"
      viewBox={`0 0 ${paper()} ${12 * CELL + letter() + 5}`}
      style={{ "max-width": `${paper() * 1.5}px` }}
      role="img"
      aria-label={`Years ${props.years[0]?.year} to ${props.years.at(-1)?.year}, January on top; ${wholeDays(missing())} missing.`}
    >
      <For each={props.years}>
        {(year, at) => (
          <g>
            <For each={year.months}>
              {(month, row) => (
                <rect
                  class={month}
                  x={at() * CELL + 1}
                  y={row() * CELL + (month === "part" ? CELL / 2 : 1)}
                  width={CELL - 2}
                  height={month === "part" ? CELL / 2 - 1 : CELL - 2}
                />
              )}
            </For>
            <Show when={isNamed(at())}>
              <text
                x={isLast(at()) ? width() : at() * CELL}
                y={12 * CELL + letter() + 1}
                font-size={`${letter()}px`}
                text-anchor={isLast(at()) ? "end" : "start"}
              >
                {year.year}
              </text>
            </Show>
          </g>
        )}
      </For>
    </svg>
  );
}

function Years(props: { readonly preview: RainPreview }) {
  return (
    <Show when={props.preview.years.length > 0}>
      <Strip years={props.preview.years} />
      <p class="help">
        A full square is a whole month, half a square one with gaps, an empty frame one without a reading.
      </p>
      <Show when={props.preview.gaps.length > 0}>
        <details>
          <summary>
            Missing: {props.preview.gaps[0]}
            {props.preview.gaps.length > 1 ? ", and more" : ""}
          </summary>
          <ul>
            <For each={props.preview.gaps}>{(gap) => <li>{gap}</li>}</For>
          </ul>
        </details>
      </Show>
      <details>
        <summary>Rain year by year</summary>
        <ul>
          <For each={props.preview.years}>
            {(year) => (
              <li>
                {year.year}: {year.rain}
                {year.missing > 0 ? `, ${wholeDays(year.missing)} missing` : ""}
              </li>
            )}
          </For>
        </ul>
      </details>
    </Show>
  );
}

export function PreviewView(props: { readonly preview: RainPreview; readonly children?: JSX.Element }) {
  const sheet = useSheet();
  return (
    <section class="preview" aria-label="The record before it is taken">
      <Show when={props.preview.title}>
        <h2>{props.preview.title}</h2>
      </Show>
      <Show when={props.preview.wrong}>
        {(text) => (
          <p class="wrong" role="alert">
            {text()} The answer before it stands again.
          </p>
        )}
      </Show>
      <Head preview={props.preview} />
      <For each={props.preview.open}>
        {(open) => <OpenReading open={open} onChoose={(value) => sheet.edit.answerRain(open.id, value)} />}
      </For>
      <Show when={props.preview.told}>{(told) => <Drier told={told()} />}</Show>
      {props.children}
      <Years preview={props.preview} />
      <Show when={props.preview.filling}>
        {(choice) => <Choice choice={choice()} onChoose={sheet.edit.fillRain} />}
      </Show>
      <Show when={props.preview.warming}>
        {(choice) => <Choice choice={choice()} onChoose={sheet.edit.fillWarmth} />}
      </Show>
      <Show when={props.preview.joining}>
        {(choice) => <Choice choice={choice()} onChoose={sheet.edit.joinRain} />}
      </Show>
      <ul class="facts">
        <For each={props.preview.facts}>{(fact) => <li>{fact}</li>}</For>
      </ul>
      <Show when={props.preview.assumptions.length > 0}>
        <details>
          <summary>Change what was assumed</summary>
          <For each={props.preview.assumptions}>
            {(choice) => (
              <Choice choice={choice} onChoose={(value) => sheet.edit.answerRain(choice.id, value)} />
            )}
          </For>
        </details>
      </Show>
    </section>
  );
}
