// Rows that hold a list: twelve months here; points and what grows in a bed beside.

import { createSignal, Index, Match, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import { SHORT_MONTHS } from "../../units/calendar-names.ts";
import { shownMonthly } from "../../units/monthly.ts";
import { editText, unitLabel } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { ContentsRow } from "./ContentsRow.tsx";
import { monthsOf, monthsUnit } from "./enter-cell.ts";
import { ListField, WrongInList } from "./ListField.tsx";
import { PointsRow } from "./PointsRow.tsx";

type Props = { readonly card: Card; readonly row: ListGiven };

function MonthsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const unit = () => monthsUnit(sheet, props);
  const locale = () => sheet.showOptions().locale;
  return (
    <details class="row wide" id={id()}>
      <summary class="label">
        {props.row.label}
        {unit() ? `, ${unitLabel(unit())}` : ""}
      </summary>
      <p class="small">{sheet.help(props.card, props.row)}</p>
      <div class="months">
        <Index each={monthsOf(sheet, props)}>
          {(value, month) => (
            <ListField
              {...props}
              at={[month]}
              name={SHORT_MONTHS[month] ?? ""}
              label={SHORT_MONTHS[month] ?? ""}
              shown={value() === null ? "" : editText(shownMonthly(value() ?? 0, unit()), "", locale())}
              onWrong={setWrong}
            />
          )}
        </Index>
      </div>
      <WrongInList text={wrong()} />
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
