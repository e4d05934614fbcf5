// One generic row for every kind of quantity.

import { Match, Switch } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type {
  ChoiceGiven,
  DateGiven,
  LinkGiven,
  ListGiven,
  NumberGiven,
  Row,
  TextGiven,
} from "../../graph/types.ts";
import { ChoiceRow, DateRow, LinkRow } from "./ChoiceRows.tsx";
import { ListRow } from "./ListRows.tsx";
import { NumberRow } from "./NumberRow.tsx";
import { ResultRow } from "./ResultRow.tsx";
import { TextRow } from "./TextRows.tsx";

export function RowView(props: { readonly card: Card; readonly row: Row }) {
  const as = <Kind extends Row>(kind: Kind["row"]): Kind | false =>
    props.row.row === kind ? (props.row as Kind) : false;
  return (
    <Switch fallback={<ResultRow card={props.card} row={props.row} />}>
      <Match when={as<NumberGiven>("given")}>{(row) => <NumberRow card={props.card} row={row()} />}</Match>
      <Match when={as<ChoiceGiven>("choice")}>{(row) => <ChoiceRow card={props.card} row={row()} />}</Match>
      <Match when={as<LinkGiven>("link")}>{(row) => <LinkRow card={props.card} row={row()} />}</Match>
      <Match when={as<DateGiven>("date")}>{(row) => <DateRow card={props.card} row={row()} />}</Match>
      <Match when={as<TextGiven>("text")}>{(row) => <TextRow card={props.card} row={row()} />}</Match>
      <Match when={as<ListGiven>("list")}>{(row) => <ListRow card={props.card} row={row()} />}</Match>
    </Switch>
  );
}
