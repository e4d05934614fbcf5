// A list of points, two numbers each: the way a hose lies, or a curve. It keeps itself in order of the first number.

import { createSignal, Index, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import { editText } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { type Point, pointMeasure, pointsOf, pointUnits, putPoints } from "./enter-cell.ts";
import { ListField, WrongInList } from "./ListField.tsx";

type Props = { readonly card: Card; readonly row: ListGiven };

const NAMES: Readonly<Record<string, string>> = {
  distance: "along",
  height: "height",
  flow: "flow",
  head: "head",
};
/** A new point lies so far behind the last one. */
const NEXT = 10;

function withOneMore(points: readonly Point[]): readonly Point[] {
  const last = points[points.length - 1];
  return [...points, last ? [last[0] + NEXT, last[1]] : [0, 0]];
}

export function PointsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const points = () => pointsOf(props);
  const put = (next: readonly Point[]) => putPoints(sheet, props, next);
  const nameOf = (side: 0 | 1): string => {
    const measure = pointMeasure(props.row, side);
    return NAMES[measure] ?? measure;
  };
  const Field = (field: { readonly index: number; readonly side: 0 | 1; readonly point: Point }) => (
    <ListField
      {...props}
      at={[field.index, field.side]}
      name={nameOf(field.side)}
      label={`Point ${field.index + 1}, ${nameOf(field.side)}`}
      shown={editText(
        field.point[field.side],
        pointUnits(sheet, props)[field.side],
        sheet.showOptions().locale,
      )}
      onWrong={setWrong}
    />
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
          <button type="button" class="small" onClick={() => put(withOneMore(points()))}>
            Add a point
          </button>
        </li>
      </ul>
      <WrongInList text={wrong() ?? sheet.failure(id())} />
    </div>
  );
}
