// Rows of words: free text, and days of the week picked by buttons.

import { For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { TextGiven } from "../../graph/types.ts";
import { SHORT_WEEKDAYS } from "../../units/calendar-names.ts";
import { useSheet } from "../sheet.ts";
import { createTyped } from "./typed-text.ts";

type Props = { readonly card: Card; readonly row: TextGiven };

const textOf = (props: Props): string => {
  const entry = props.card.givens[props.row.name]?.value;
  return typeof entry === "string" ? entry : props.row.default;
};

function Weekdays(props: Props) {
  const sheet = useSheet();
  const picked = () =>
    textOf(props)
      .toLowerCase()
      .split(/[\s,]+/);
  const isOn = (day: string) => picked().includes(day.toLowerCase());
  const toggle = (day: string) => {
    const next = SHORT_WEEKDAYS.filter((one) => (one === day ? !isOn(one) : isOn(one)));
    sheet.edit.given(props.card, props.row, { value: next.join(" ").toLowerCase(), unit: "" });
    sheet.edit.settle();
  };
  return (
    <div class="row wide" id={`${props.card.id}.${props.row.name}`} tabindex="-1">
      <span class="label" title={sheet.help(props.card, props.row)}>
        {props.row.label}
      </span>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid in every browser. */}
      <span class="weekdays" role="group" aria-label={props.row.label}>
        <For each={SHORT_WEEKDAYS}>
          {(day) => (
            <button type="button" aria-pressed={isOn(day)} onClick={() => toggle(day)}>
              {day}
            </button>
          )}
        </For>
      </span>
    </div>
  );
}

function FreeText(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [draft, setDraft] = createTyped(sheet, id);
  return (
    <div class="row wide">
      <label class="label" for={id()}>
        {props.row.label}
      </label>
      <input
        id={id()}
        class="text"
        autocomplete="off"
        spellcheck={false}
        title={sheet.help(props.card, props.row)}
        value={draft() ?? textOf(props)}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onChange={(event) => {
          sheet.edit.given(props.card, props.row, { value: event.currentTarget.value, unit: "" });
          setDraft(null);
          sheet.edit.settle();
        }}
      />
    </div>
  );
}

export function TextRow(props: Props) {
  return (
    <Show when={props.row.of === "weekdays"} fallback={<FreeText {...props} />}>
      <Weekdays {...props} />
    </Show>
  );
}
