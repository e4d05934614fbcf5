// Rows that hold a list: twelve months, points, or what grows in a bed.

import { createSignal, For, Index, Match, Show, Switch } from "solid-js";
import type { Card, Content } from "../document/worksheet.ts";
import type { ListGiven } from "../graph/types.ts";
import { editText, unitLabel } from "../units/show.ts";
import { DayPicker } from "./DayPicker.tsx";
import { readTyped } from "./number-text.ts";
import { PointsRow } from "./PointsRow.tsx";
import { useSheet } from "./sheet.ts";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

type Props = { readonly card: Card; readonly row: ListGiven };

function MonthsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const entry = () => props.card.givens[props.row.name];
  const unit = () => entry()?.unit ?? props.row.unit ?? "";
  const values = (): readonly (number | null)[] => {
    const list = entry()?.value ?? props.row.default;
    return MONTHS.map((_, month) =>
      Array.isArray(list) && typeof list[month] === "number" ? list[month] : null,
    );
  };
  const put = (month: number, text: string) => {
    setWrong(null);
    const measure = props.row.measures?.[0] ?? "factor";
    const read = readTyped(sheet, text, measure, unit());
    if (!read.ok) return setWrong(`${MONTHS[month]}: ${read.message}`);
    if (unit() !== "" && read.unit !== unit())
      return setWrong(`${MONTHS[month]}: all twelve are in ${unitLabel(unit())}.`);
    const next = values().map((value, at) => (at === month ? read.value : (value ?? 0)));
    sheet.edit.given(props.card, props.row, { value: next, unit: unit() });
    sheet.edit.settle();
  };
  const locale = () => sheet.showOptions().locale;
  return (
    <details class="row wide" id={id()}>
      <summary class="label">
        {props.row.label}
        {unit() ? `, ${unitLabel(unit())}` : ""}
      </summary>
      <p class="small">{props.row.help}</p>
      <div class="months">
        <Index each={values()}>
          {(value, month) => (
            <label>
              {MONTHS[month]}
              <input
                inputmode="decimal"
                autocomplete="off"
                value={value() === null ? "" : editText(value() ?? 0, "", locale())}
                onChange={(event) => put(month, event.currentTarget.value)}
              />
            </label>
          )}
        </Index>
      </div>
      <Show when={wrong()}>
        {(text) => (
          <p class="wrong" role="alert">
            {text()}
          </p>
        )}
      </Show>
    </details>
  );
}

function ContentLine(
  props: Props & { readonly content: Content; readonly onPut: (content: Content | null) => void },
) {
  const sheet = useSheet();
  const share = () =>
    editText(Number((props.content.share * 100).toPrecision(6)), "%", sheet.showOptions().locale);
  return (
    <li>
      <select
        aria-label="Crop"
        value={props.content.crop}
        onChange={(event) => props.onPut({ ...props.content, crop: event.currentTarget.value })}
      >
        <Show when={!props.row.crops?.some((crop) => crop.word === props.content.crop)}>
          <option value={props.content.crop}>{props.content.crop}</option>
        </Show>
        <For each={props.row.crops}>
          {(crop) => (
            <option value={crop.word} selected={crop.word === props.content.crop}>
              {crop.label}
            </option>
          )}
        </For>
      </select>
      <DayPicker
        id={`${props.card.id}.planted`}
        label="Planted"
        value={props.content.planted}
        optional={false}
        onPick={(planted) => planted && props.onPut({ ...props.content, planted })}
      />
      <span class="value">
        <input
          class="measure"
          aria-label="Share of the bed"
          value={share()}
          onChange={(event) => {
            const read = readTyped(sheet, event.currentTarget.value, "share", "%");
            if (read.ok && read.si >= 0 && read.si <= 1) props.onPut({ ...props.content, share: read.si });
            else event.currentTarget.value = share();
          }}
        />
        <button type="button" class="small" aria-label="Take this crop out" onClick={() => props.onPut(null)}>
          ✕
        </button>
      </span>
    </li>
  );
}

function ContentsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const list = (): readonly Content[] =>
    (props.card.givens[props.row.name]?.value ?? props.row.default ?? []) as readonly Content[];
  const put = (next: readonly Content[]) => {
    sheet.edit.given(props.card, props.row, { value: [...next], unit: "" });
    sheet.edit.settle();
  };
  return (
    <div class="row wide" id={id()} tabindex="-1">
      <span class="label" title={props.row.help}>
        {props.row.label}
      </span>
      <ul class="items">
        <Index each={list()}>
          {(content, index) => (
            <ContentLine
              {...props}
              content={content()}
              onPut={(next) =>
                put(list().flatMap((item, at) => (at === index ? (next ? [next] : []) : [item])))
              }
            />
          )}
        </Index>
        <li>
          <button
            type="button"
            class="small"
            onClick={() =>
              put([
                ...list(),
                {
                  crop: props.row.crops?.[0]?.word ?? "",
                  planted: "05-15",
                  share: list().length > 0 ? 0 : 1,
                },
              ])
            }
          >
            Add a crop
          </button>
        </li>
      </ul>
      <Show when={sheet.failure(id())}>{(text) => <p class="wrong">{text()}</p>}</Show>
    </div>
  );
}

export function ListRow(props: Props) {
  return (
    <Switch fallback={<MonthsRow {...props} />}>
      <Match when={props.row.of === "contents"}>
        <ContentsRow {...props} />
      </Match>
      <Match when={props.row.of === "points"}>
        <PointsRow {...props} />
      </Match>
    </Switch>
  );
}
