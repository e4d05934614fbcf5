// All parts by their groups, one line each, with what can be added: pressing one opens it.

import { For, Index, onMount, Show } from "solid-js";
import { isBare, offered } from "../../kinds/kind.ts";
import { useSheet } from "../sheet.ts";
import { Icon } from "./Icon.tsx";
import type { Parts, PartsOfGroup } from "./parts.ts";

function Line(props: { readonly parts: Parts; readonly id: string; readonly onOpen: () => void }) {
  const sheet = useSheet();
  const card = () => sheet.worksheet().cards.find(({ id }) => id === props.id);
  const leads = () => sheet.kinds[card()?.kind ?? ""]?.rows.filter((row) => row.lead && !row.hidden) ?? [];
  return (
    <li>
      <button
        type="button"
        data-card={props.id}
        aria-current={sheet.looking.part() === props.id ? "true" : undefined}
        onClick={() => {
          sheet.edit.goTo(props.id);
          props.onOpen();
        }}
      >
        <Icon kind={card()?.kind ?? ""} />
        <span class="name">{props.parts.titleOf(props.id)}</span>
        <Show when={sheet.looking.width() === "phone"}>
          <For each={leads()}>
            {(row) => <span class="says">{sheet.shown(`${props.id}.${row.name}`)}</span>}
          </For>
        </Show>
        <Show when={props.parts.troubleOf(props.id)}>
          {(number) => (
            <b class="disc">
              <span class="unseen">look at this: </span>
              {number()}
            </b>
          )}
        </Show>
      </button>
    </li>
  );
}

/** What can be added to a group. */
export function Adding(props: { readonly group: PartsOfGroup }) {
  const sheet = useSheet();
  return (
    <For each={offered(props.group.kinds, sheet.worksheet().cards)}>
      {(kind) => (
        <button type="button" class="add" title={kind.purpose} onClick={() => sheet.edit.addCard(kind)}>
          + {kind.label}
        </button>
      )}
    </For>
  );
}

function GroupLines(props: {
  readonly parts: Parts;
  readonly group: PartsOfGroup;
  readonly onOpen: () => void;
}) {
  return (
    <section aria-label={props.group.title} data-group={props.group.title}>
      <h2>{props.group.title}</h2>
      <ul>
        <For each={props.group.cards.map(({ id }) => id)}>
          {(id) => <Line parts={props.parts} id={id} onOpen={props.onOpen} />}
        </For>
      </ul>
      <p class="adding">
        <Adding group={props.group} />
      </p>
    </section>
  );
}

export function PartList(props: {
  readonly parts: Parts;
  /** Group that is brought into view. */
  readonly from?: string | null;
  readonly onOpen?: () => void;
}) {
  const sheet = useSheet();
  let list: HTMLElement | undefined;
  onMount(() => {
    const group = [...(list?.querySelectorAll<HTMLElement>("section") ?? [])].find(
      ({ dataset }) => dataset["group"] === props.from,
    );
    group?.scrollIntoView({ block: "start" });
    group?.querySelector("button")?.focus({ preventScroll: true });
  });
  const opened = () => props.onOpen?.();
  return (
    <nav class="list" aria-label="All parts" ref={list}>
      <Show when={isBare(sheet.kinds, sheet.worksheet().cards)}>
        <p class="aside">Add things one by one, or say what there is.</p>
      </Show>
      <Index each={props.parts.groups()}>
        {(group) => <GroupLines parts={props.parts} group={group()} onOpen={opened} />}
      </Index>
      <Show when={props.parts.unknown().length > 0}>
        <section aria-label="Cards this version does not know">
          <h2>Cards this version does not know</h2>
          <ul>
            <For each={props.parts.unknown().map(({ id }) => id)}>
              {(id) => <Line parts={props.parts} id={id} onOpen={opened} />}
            </For>
          </ul>
        </section>
      </Show>
    </nav>
  );
}
