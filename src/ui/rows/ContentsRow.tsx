// What grows in a bed: crop, planting, share; and where it differs from the tables, the last picking and a trellis.

import { createSignal, For, Index, Show } from "solid-js";
import type { Card, Content } from "../../document/worksheet.ts";
import type { ListGiven } from "../../graph/types.ts";
import { editText } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { Cautions } from "./Cautions.tsx";
import { DayPicker } from "./DayPicker.tsx";
import { contentsOf } from "./enter-cell.ts";
import { ListField, WrongInList } from "./ListField.tsx";

type Props = { readonly card: Card; readonly row: ListGiven };

type LineProps = Props & {
  readonly index: number;
  readonly content: Content;
  readonly onWrong: (text: string | null) => void;
  readonly onPut: (content: Content | null) => void;
};

/** What is only said where it differs from the tables. */
function Details(props: LineProps) {
  const crop = () => props.row.crops?.find(({ word }) => word === props.content.crop);
  const pickUntil = (until: string | null) => {
    const { until: _was, ...rest } = props.content;
    props.onPut(until ? { ...rest, until } : rest);
  };
  return (
    <div class="content-more">
      <span class="pick">
        <span class="label">last picking</span>
        <DayPicker
          id={`${props.card.id}.until`}
          label="Last picking"
          none="as the tables"
          value={props.content.until ?? null}
          optional={true}
          onPick={pickUntil}
        />
      </span>
      <Show when={crop()?.trains}>
        <label class="tick">
          <input
            type="checkbox"
            checked={props.content.trained === true}
            onChange={(event) => {
              const { trained: _was, ...rest } = props.content;
              props.onPut(event.currentTarget.checked ? { ...rest, trained: true } : rest);
            }}
          />
          on a trellis or stakes
        </label>
      </Show>
      <Show when={crop()?.note}>{(note) => <small>{note()}</small>}</Show>
    </div>
  );
}

function ContentLine(props: LineProps) {
  const sheet = useSheet();
  const share = () =>
    editText(Number((props.content.share * 100).toPrecision(6)), "%", sheet.showOptions().locale);
  return (
    <li>
      <select
        aria-label="Crop"
        value={props.content.crop}
        onChange={(event) => {
          const { trained: _was, ...rest } = props.content;
          props.onPut({ ...rest, crop: event.currentTarget.value });
        }}
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
        <ListField
          card={props.card}
          row={props.row}
          at={[props.index]}
          label="Share of the bed"
          shown={share()}
          onWrong={props.onWrong}
        />
        <button type="button" class="small" aria-label="Take this crop out" onClick={() => props.onPut(null)}>
          ✕
        </button>
      </span>
      <Details {...props} />
    </li>
  );
}

/** What is left of the bed for one more crop. */
const restOf = (list: readonly Content[]): number =>
  Math.max(0, Number((1 - list.reduce((sum, { share }) => sum + share, 0)).toPrecision(6)));

export function ContentsRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const [wrong, setWrong] = createSignal<string | null>(null);
  const list = () => contentsOf(props);
  const put = (next: readonly Content[]) => {
    sheet.edit.given(props.card, props.row, { value: [...next], unit: "" });
    sheet.edit.settle();
  };
  const add = () =>
    put([...list(), { crop: props.row.crops?.[0]?.word ?? "", planted: "05-15", share: restOf(list()) }]);
  return (
    <div class="row wide" id={id()} tabindex="-1">
      <span class="label" title={sheet.help(props.card, props.row)}>
        {props.row.label}
      </span>
      <ul class="items">
        <Index each={list()}>
          {(content, index) => (
            <ContentLine
              {...props}
              index={index}
              content={content()}
              onWrong={setWrong}
              onPut={(next) =>
                put(list().flatMap((item, at) => (at === index ? (next ? [next] : []) : [item])))
              }
            />
          )}
        </Index>
        <li>
          <button type="button" class="small" onClick={add}>
            Add a crop
          </button>
        </li>
      </ul>
      <WrongInList text={wrong() ?? sheet.failure(id())} />
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
