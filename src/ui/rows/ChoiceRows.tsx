// Rows of which one picks: words, links to other cards, dates.

import { For, Index, type JSX, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ChoiceGiven, DateGiven, Given, LinkGiven } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { Cautions } from "./Cautions.tsx";
import { DayPicker } from "./DayPicker.tsx";
import { keepInView } from "./in-view.ts";

/** A row of which the value is one control under the row's label, with what is wrong and what to beware of. */
function PickRow(props: {
  readonly card: Card;
  readonly row: Given;
  /** Whether it can be taken in hand, to see what every other word or day would do. */
  readonly turned?: true;
  readonly children: JSX.Element;
}) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const held = () => sheet.looking.inHand() === id();
  let line: HTMLDivElement | undefined;
  keepInView(sheet, { id, held, line: () => line });
  return (
    <div class="row" classList={{ held: held() }} ref={line}>
      <Show
        when={props.turned}
        fallback={
          <label class="label" for={id()} title={sheet.help(props.card, props.row)}>
            {props.row.label}
          </label>
        }
      >
        <button
          type="button"
          class="label"
          title={sheet.help(props.card, props.row)}
          aria-pressed={held()}
          onClick={() => sheet.looking.take(id())}
        >
          {props.row.label}
        </button>
      </Show>
      <span class="value">{props.children}</span>
      <Show when={sheet.failure(id())}>{(text) => <p class="wrong">{text()}</p>}</Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}

export function ChoiceRow(props: { readonly card: Card; readonly row: ChoiceGiven }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const word = () => {
    const entry = props.card.givens[props.row.name]?.value;
    return typeof entry === "string" ? entry : props.row.default;
  };
  return (
    <PickRow card={props.card} row={props.row} turned>
      <select
        id={id()}
        aria-label={props.row.label}
        value={word()}
        onChange={(event) => {
          const { value } = event.currentTarget;
          sheet.looking.take(id());
          sheet.edit.given(props.card, props.row, { value, unit: "" }, true);
        }}
      >
        <For each={props.row.options}>{(option) => <option value={option.word}>{option.label}</option>}</For>
      </select>
    </PickRow>
  );
}

function createTargets(props: { readonly card: Card; readonly row: LinkGiven }) {
  const sheet = useSheet();
  return () =>
    sheet
      .worksheet()
      .cards.filter((card) => props.row.kinds.includes(card.kind) && card.id !== props.card.id);
}

function SingleLink(props: { readonly card: Card; readonly row: LinkGiven }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const targets = createTargets(props);
  const value = () => {
    const entry = props.card.givens[props.row.name]?.value;
    return typeof entry === "string" ? entry : "";
  };
  const dead = () => value() !== "" && !targets().some((card) => card.id === value());
  return (
    <PickRow card={props.card} row={props.row}>
      <select
        id={id()}
        value={value()}
        onChange={(event) =>
          sheet.edit.given(
            props.card,
            props.row,
            event.currentTarget.value ? { value: event.currentTarget.value, unit: "" } : null,
          )
        }
      >
        <option value="">{props.row.absent}</option>
        <Show when={dead()}>
          <option value={value()}>{value()}, which is gone</option>
        </Show>
        <For each={targets()}>
          {(card) => (
            <option value={card.id} selected={card.id === value()}>
              {card.title}
            </option>
          )}
        </For>
      </select>
    </PickRow>
  );
}

/** What one of the linked may be taken for instead. */
function Swaps(props: {
  readonly card: Card;
  readonly row: LinkGiven;
  readonly linked: readonly { readonly kind: string }[];
}) {
  const sheet = useSheet();
  const has = (kind: string) => props.linked.some((card) => card.kind === kind);
  return (
    <For each={(props.row.swaps ?? []).filter(({ from, to }) => has(from) && !has(to))}>
      {(swap) => (
        <button type="button" class="small" onClick={() => sheet.edit.swapLink(props.card, props.row, swap)}>
          {swap.ask}
        </button>
      )}
    </For>
  );
}

function ManyLinks(props: { readonly card: Card; readonly row: LinkGiven }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const targets = createTargets(props);
  const ids = (): readonly string[] => {
    const value = props.card.givens[props.row.name]?.value;
    return Array.isArray(value) ? value.filter((item): item is string => typeof item === "string") : [];
  };
  const put = (list: readonly string[]) =>
    sheet.edit.given(props.card, props.row, list.length > 0 ? { value: [...list], unit: "" } : null);
  const linked = () => targets().filter((card) => ids().includes(card.id));
  const title = (target: string) =>
    targets().find((card) => card.id === target)?.title ?? `${target}, which is gone`;
  return (
    <div class="row wide" id={id()} tabindex="-1">
      <span class="label" title={sheet.help(props.card, props.row)}>
        {props.row.label}
      </span>
      <ol class="items">
        <Index each={ids()}>
          {(target, index) => (
            <li>
              <b>{title(target())}</b>
              <button
                type="button"
                class="small"
                disabled={index === 0}
                onClick={() => put(moveUp(ids(), index))}
              >
                Try first
              </button>
              <button type="button" class="small" onClick={() => put(ids().filter((_, at) => at !== index))}>
                Remove
              </button>
            </li>
          )}
        </Index>
        <li>
          <select
            aria-label={`${props.row.label}: add`}
            value=""
            onChange={(event) => {
              put([...ids(), event.currentTarget.value]);
              event.currentTarget.value = "";
            }}
          >
            <option value="">add …</option>
            <For each={targets().filter((card) => !ids().includes(card.id))}>
              {(card) => <option value={card.id}>{card.title}</option>}
            </For>
          </select>
        </li>
      </ol>
      <Swaps card={props.card} row={props.row} linked={linked()} />
      <Show when={sheet.failure(id())}>{(text) => <p class="wrong">{text()}</p>}</Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}

function moveUp(list: readonly string[], index: number): readonly string[] {
  const item = list[index];
  const rest = list.filter((_, at) => at !== index);
  return item === undefined ? list : [item, ...rest];
}

export function LinkRow(props: { readonly card: Card; readonly row: LinkGiven }) {
  return (
    <Show when={props.row.many} fallback={<SingleLink {...props} />}>
      <ManyLinks {...props} />
    </Show>
  );
}

export function DateRow(props: { readonly card: Card; readonly row: DateGiven }) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const value = () => {
    const entry = props.card.givens[props.row.name];
    return typeof entry?.value === "string" ? entry.value : entry ? null : props.row.default;
  };
  const put = (date: string | null): void => {
    sheet.looking.take(id());
    sheet.edit.given(props.card, props.row, date ? { value: date, unit: "" } : null, true);
  };
  return (
    <PickRow card={props.card} row={props.row} turned>
      <Show
        when={props.row.form === "month_day"}
        fallback={
          <input
            id={id()}
            type="date"
            class="measure"
            aria-label={props.row.label}
            value={value() ?? ""}
            onChange={(event) => put(event.currentTarget.value || null)}
          />
        }
      >
        <DayPicker
          id={id()}
          label={props.row.label}
          value={value()}
          optional={props.row.default === null}
          onPick={put}
        />
      </Show>
    </PickRow>
  );
}
