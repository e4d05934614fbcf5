// One field of a list: what was typed stands until it can be read, and is found again where the page was left.

import { Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import { cellField, enterCell, type ListPlace } from "./enter-cell.ts";
import { createTyped } from "./typed-text.ts";

type Props = ListPlace & {
  readonly at: readonly number[];
  /** Stands beside the field, if it is not only spoken. */
  readonly name?: string;
  readonly label: string;
  readonly shown: string;
  readonly onWrong: (text: string | null) => void;
};

export function ListField(props: Props) {
  const sheet = useSheet();
  const [draft, setDraft] = createTyped(sheet, () =>
    cellField.of(`${props.card.id}.${props.row.name}`, ...props.at),
  );
  const put = (text: string): void => {
    const wrong = enterCell(sheet, props, props.at, text);
    props.onWrong(wrong);
    if (wrong === null) setDraft(null);
  };
  return (
    <label class="list-field">
      {props.name}
      <input
        class="measure"
        inputmode="text"
        autocomplete="off"
        aria-label={props.label}
        aria-invalid={draft() !== null}
        value={draft() ?? props.shown}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onChange={(event) => put(event.currentTarget.value)}
      />
    </label>
  );
}

/** What is wrong with a field of the list, told below it. */
export function WrongInList(props: { readonly text: string | null | undefined }) {
  return (
    <Show when={props.text}>
      {(text) => (
        <p class="wrong" role="alert">
          {text()}
        </p>
      )}
    </Show>
  );
}
