// A list of points, two numbers each: the way a hose lies, or a curve. It keeps itself in order of the first number.

import { createSignal, Index, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import type { MeasureName } from "../../units/measures.ts";
import { editText, unitFor } from "../../units/show.ts";
import { fromSi } from "../../units/unit.ts";
import { useSheet } from "../sheet.ts";
import { readTyped } from "./number-text.ts";

type Props = { readonly card: Card; readonly row: ListGiven };
type Point = readonly [number, number];

const NAMES: Readonly<Record<string, string>> = {
  distance: "along",
  height: "height",
  flow: "flow",
  head: "head",
};
/** A new point lies so far behind the last one. */
const NEXT = 10;

function isPoint(item: unknown): item is Point {
  return Array.isArray(item) && item.length === 2 && item.every((part) => typeof part === "number");
}

export function PointsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const entry = () => props.card.givens[props.row.name];
  const measureAt = (side: 0 | 1): MeasureName =>
    props.row.measures?.[side] ?? props.row.measures?.[0] ?? "factor";
  const units = (): readonly [string, string] => {
    const [across, up] = (entry()?.unit ?? "").split(",").map((part) => part.trim());
    const usual = (side: 0 | 1) => unitFor(measureAt(side), sheet.showOptions().units);
    return [across || usual(0), up || across || usual(1)];
  };
  const points = (): readonly Point[] => {
    const list = entry()?.value;
    return Array.isArray(list) ? list.filter(isPoint) : [];
  };
  const put = (next: readonly Point[]) => {
    const sorted = [...next].sort((one, other) => one[0] - other[0]);
    const value = sorted.map((point) => [...point]);
    sheet.edit.given(props.card, props.row, value.length > 0 ? { value, unit: units().join(", ") } : null);
    sheet.edit.settle();
  };
  const type = (index: number, side: 0 | 1, text: string) => {
    setWrong(null);
    const read = readTyped(sheet, text, measureAt(side), units()[side]);
    if (!read.ok) return setWrong(`Point ${index + 1}: ${read.message}`);
    const number = Number(fromSi(read.si, units()[side]).toPrecision(12));
    put(
      points().map(
        (point, at): Point => (at !== index ? point : side === 0 ? [number, point[1]] : [point[0], number]),
      ),
    );
  };
  const add = () => {
    const last = points()[points().length - 1];
    put([...points(), last ? [last[0] + NEXT, last[1]] : [0, 0]]);
  };
  const Field = (field: { readonly index: number; readonly side: 0 | 1; readonly point: Point }) => (
    <label>
      {NAMES[measureAt(field.side)] ?? measureAt(field.side)}
      <input
        class="measure"
        inputmode="text"
        autocomplete="off"
        aria-label={`Point ${field.index + 1}, ${NAMES[measureAt(field.side)] ?? measureAt(field.side)}`}
        value={editText(field.point[field.side], units()[field.side], sheet.showOptions().locale)}
        onChange={(event) => type(field.index, field.side, event.currentTarget.value)}
      />
    </label>
  );
  return (
    <div class="row wide" id={id()} tabindex="-1">
      <span class="label" title={sheet.help(props.card, props.row)}>
        {props.row.label}
      </span>
      <ul class="items points">
        <Index each={points()}>
          {(point, index) => (
            <li>
              <Field index={index} side={0} point={point()} />
              <Field index={index} side={1} point={point()} />
              <button
                type="button"
                class="small"
                aria-label={`Take point ${index + 1} out`}
                onClick={() => put(points().filter((_, at) => at !== index))}
              >
                ✕
              </button>
            </li>
          )}
        </Index>
        <li>
          <Show when={points().length === 0}>
            <span class="none">{props.row.absent}</span>
          </Show>
          <button type="button" class="small" onClick={add}>
            Add a point
          </button>
        </li>
      </ul>
      <Show when={wrong() ?? sheet.failure(id())}>
        {(text) => (
          <p class="wrong" role="alert">
            {text()}
          </p>
        )}
      </Show>
    </div>
  );
}
