// What was measured of a number that is worked out, what it teaches, and that lesson kept by itself.

import { createSignal, Show } from "solid-js";
import type { Card, Entry } from "../../document/worksheet.ts";
import { numberIn } from "../../graph/readers.ts";
import type { Row } from "../../graph/types.ts";
import type { MeasureName } from "../../units/measures.ts";
import { unitFor } from "../../units/show.ts";
import { fromSi } from "../../units/unit.ts";
import { useSheet } from "../sheet.ts";
import { enterMeasured, measuredField } from "./measured-field.ts";
import { createTyped } from "./typed-text.ts";

type Props = {
  readonly quantity: string;
  readonly card: Card;
  readonly row: Row;
  readonly teaches: string;
  /** The row that holds the lesson by itself. */
  readonly lesson?: string | undefined;
  readonly measure: MeasureName;
};

/** Finer than any timing is. */
const KEPT_DIGITS = 6;

/** Puts what was learned in the place of what was measured, so that it holds when the parts are moved. */
function KeepLesson(props: { readonly card: Card; readonly row: Row; readonly lesson: Row }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.lesson.name}`;
  const entry = (): Entry | null => {
    const [learned, row] = [numberIn(sheet.result(id())), props.lesson];
    if (learned === null || row.row !== "output") return null;
    if (row.measure === "text" || row.measure === "series") return null;
    const unit = unitFor(row.measure, sheet.showOptions().units);
    return { value: Number(fromSi(learned, unit).toPrecision(KEPT_DIGITS)), unit, from: "measured" };
  };
  return (
    <Show when={entry()}>
      {(kept) => (
        <p class="lesson">
          It holds for tanks and hose as they stand now. Before you move or change them, keep only its lesson;
          the number is then worked out from that.{" "}
          <button
            type="button"
            class="small"
            onClick={() => sheet.edit.keepLesson(props.card, props.row, props.lesson, kept())}
          >
            Keep the {props.lesson.label.toLowerCase()}, {sheet.shown(id())}
          </button>
        </p>
      )}
    </Show>
  );
}

export function Measured(props: Props) {
  const sheet = useSheet();
  const field = () => measuredField.of(props.quantity);
  const [text, setText] = createTyped(sheet, field);
  const [wrong, setWrong] = createSignal<string | null>(null);
  const entry = (): Entry | undefined => props.card.measured[props.row.name];
  const lesson = (): Row | undefined =>
    sheet.kinds[props.card.kind]?.rows.find((row) => row.name === props.lesson);
  const put = (typed: string) => {
    const { card, row, measure } = props;
    const refused = enterMeasured(sheet, { card, row, measure }, typed);
    setWrong(refused);
    setText(refused === null ? null : typed);
  };
  return (
    <div class="measured">
      <label for={field()}>You measured</label>
      <input
        id={field()}
        autocomplete="off"
        value={text() ?? (entry() ? sheet.shown(props.quantity) : "")}
        placeholder="nothing yet"
        onInput={(event) => setText(event.currentTarget.value)}
        onChange={(event) => put(event.currentTarget.value)}
      />
      <Show when={entry()}>
        <button type="button" class="small" onClick={() => put("")}>
          Forget it
        </button>
      </Show>
      <Show when={!entry()}>
        <small>It teaches {props.teaches}.</small>
      </Show>
      <Show when={entry() && lesson()}>
        {(taught) => <KeepLesson card={props.card} row={props.row} lesson={taught()} />}
      </Show>
      <Show when={wrong()}>
        {(message) => (
          <p class="wrong" role="alert">
            {message()}
          </p>
        )}
      </Show>
    </div>
  );
}
