// Rows of words: free text, and days of the week picked by buttons.

import { createSignal, For, Match, Show, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { Problem, TextGiven } from "../../graph/types.ts";
import { SHORT_WEEKDAYS } from "../../units/calendar-names.ts";
import { currencyProblem } from "../../units/other-money.ts";
import { useSheet } from "../sheet.ts";
import { faultOf, feeds } from "./formula-fault.ts";
import { NamesThere } from "./NamesThere.tsx";
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

/** What is wrong with the text, with the place in it marked. */
function Fault(props: { readonly id: string; readonly fault: Problem; readonly text: string }) {
  const cut = () => {
    const { start, end } = props.fault.span ?? { start: 0, end: 0 };
    return [props.text.slice(0, start), props.text.slice(start, end), props.text.slice(end)] as const;
  };
  return (
    <p class="wrong" id={props.id}>
      {props.fault.text}
      <Show when={props.fault.span && props.text !== ""}>
        <span class="where">
          {cut()[0]}
          <mark>{cut()[1] || "\u00a0"}</mark>
          {cut()[2]}
        </span>
      </Show>
    </p>
  );
}

/** One line of text, which is seen whole however long it is. */
function FreeText(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [draft, setDraft] = createTyped(sheet, id);
  const text = () => draft() ?? textOf(props);
  const fed = () => feeds(sheet, props.card, props.row);
  const fault = () => {
    const found = fed();
    const its = found && faultOf(sheet, props.card, found.number);
    return its?.as === found?.as ? its : null;
  };
  let field: HTMLTextAreaElement | undefined;
  const put = (typed: string): void => {
    const value = typed.replace(/\s*\n\s*/g, " ");
    setDraft(null);
    if (field) field.value = value;
    if (value === textOf(props)) return;
    sheet.edit.given(props.card, props.row, { value, unit: "" });
    sheet.edit.settle();
  };
  const write = (name: string): void => {
    if (!field) return;
    field.setRangeText(name, field.selectionStart, field.selectionEnd, "end");
    setDraft(field.value);
    field.focus();
  };
  return (
    <div class="row wide">
      <label class="label" for={id()}>
        {props.row.label}
      </label>
      {/* The same text lies unseen behind the field and gives it its height. */}
      <span class="grows" data-text={`${text()} `}>
        <textarea
          id={id()}
          class="text"
          rows="1"
          autocomplete="off"
          spellcheck={false}
          enterkeyhint="done"
          aria-invalid={fault() ? "true" : undefined}
          aria-describedby={fault() ? `${id()}-fault` : undefined}
          title={sheet.help(props.card, props.row)}
          ref={field}
          value={text()}
          onInput={(event) => setDraft(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || event.isComposing) return;
            event.preventDefault();
            put(event.currentTarget.value);
          }}
          onChange={(event) => put(event.currentTarget.value)}
        />
      </span>
      <Show when={fault()}>{(its) => <Fault id={`${id()}-fault`} fault={its()} text={textOf(props)} />}</Show>
      <Show when={fed()?.as === "formula"}>
        <NamesThere card={props.card} onPick={write} />
      </Show>
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
