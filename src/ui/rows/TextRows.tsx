// Rows of words: free text, and days of the week picked by buttons.

import { createSignal, For, Match, Show, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { TextGiven } from "../../graph/types.ts";
import { SHORT_WEEKDAYS } from "../../units/calendar-names.ts";
import { currencyProblem } from "../../units/other-money.ts";
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

/** What money is counted in: of the whole worksheet, not of its card. */
function Currency(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [draft, setDraft] = createTyped(sheet, id);
  const stands = () => sheet.shown(id());
  const [problem, setProblem] = createSignal<string | null>(null);
  const enter = () => {
    const text = draft()?.trim() ?? "";
    setProblem(text === "" ? null : currencyProblem(text));
    // What cannot be taken stays to be mended; nothing typed means that it stays as it is.
    if (problem() !== null) return;
    setDraft(null);
    if (text !== "" && text !== stands()) sheet.edit.currency(text);
  };
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
        aria-invalid={problem() !== null}
        value={draft() ?? stands()}
        onInput={(event) => {
          setProblem(null);
          setDraft(event.currentTarget.value);
        }}
        onChange={enter}
      />
      <Show when={problem()}>
        {(why) => (
          <p class="wrong" role="alert">
            {why()}
          </p>
        )}
      </Show>
    </div>
  );
}

export function TextRow(props: Props) {
  return (
    <Switch fallback={<FreeText {...props} />}>
      <Match when={props.row.of === "weekdays"}>
        <Weekdays {...props} />
      </Match>
      <Match when={props.row.of === "currency"}>
        <Currency {...props} />
      </Match>
    </Switch>
  );
}
