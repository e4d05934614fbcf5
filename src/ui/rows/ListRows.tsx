// Rows that hold a list: twelve months here; points and what grows in a bed beside.

import { createSignal, Index, Match, Show, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";
import { editText, unitLabel } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { ContentsRow } from "./ContentsRow.tsx";
import { readTyped } from "./number-text.ts";
import { PointsRow } from "./PointsRow.tsx";

type Props = { readonly card: Card; readonly row: ListGiven };

function MonthsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const entry = () => props.card.givens[props.row.name];
  const unit = () => entry()?.unit ?? props.row.unit ?? "";
  const values = (): readonly (number | null)[] => {
    const list = entry()?.value ?? props.row.default;
    return SHORT_MONTHS.map((_, month) =>
      Array.isArray(list) && typeof list[month] === "number" ? list[month] : null,
    );
  };
  const put = (month: number, text: string) => {
    setWrong(null);
    const measure = props.row.measures?.[0] ?? "factor";
    const read = readTyped(sheet, text, measure, unit());
    if (!read.ok) return setWrong(`${SHORT_MONTHS[month]}: ${read.message}`);
    if (unit() !== "" && read.unit !== unit())
      return setWrong(`${SHORT_MONTHS[month]}: all twelve are in ${unitLabel(unit())}.`);
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
      <p class="small">{sheet.help(props.card, props.row)}</p>
      <div class="months">
        <Index each={values()}>
          {(value, month) => (
            <label>
              {SHORT_MONTHS[month]}
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
