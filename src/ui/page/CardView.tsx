// One card, whatever its kind: its name, its given numbers, its results, and the rest behind "more".

import { createMemo, For, Show } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import type { Card } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import type { Row } from "../../graph/types.ts";
import { BySeason } from "../charts/BySeason.tsx";
import { Figures } from "../charts/Figures.tsx";
import { SizeCurve } from "../charts/SizeCurve.tsx";
import { ThroughYear } from "../charts/ThroughYear.tsx";
import { DipStrip } from "../dialogs/DipStrip.tsx";
import { RainPicker } from "../dialogs/RainPicker.tsx";
import { LeadRow } from "../rows/LeadRow.tsx";
import { RowView } from "../rows/Rows.tsx";
import { isGiven } from "../rows/row-kinds.ts";
import { useSheet } from "../sheet.ts";
import { FoldedCard } from "./FoldedCard.tsx";
import { Icon } from "./Icon.tsx";

function Menu(props: { readonly card: Card }) {
  const sheet = useSheet();
  let menu: HTMLDetailsElement | undefined;
  const act = (doing: () => void) => () => {
    if (menu) menu.open = false;
    doing();
  };
  return (
    <details class="more-menu" ref={menu}>
      <summary aria-label={`More for ${props.card.title}`}>⋯</summary>
      <div>
        <button type="button" onClick={act(() => sheet.edit.copyCard(props.card))}>
          Make a copy
        </button>
        <button type="button" onClick={act(() => sheet.edit.moveCard(props.card, -1))}>
          Move up
        </button>
        <button type="button" onClick={act(() => sheet.edit.moveCard(props.card, 1))}>
          Move down
        </button>
        <Show when={sheet.kinds[props.card.kind]?.vessel}>
          {(vessel) => <DipStrip card={props.card} row={vessel()} onOpen={act(() => {})} />}
        </Show>
        <button type="button" data-tone="trouble" onClick={act(() => sheet.edit.removeCard(props.card))}>
          Take it out
        </button>
      </div>
    </details>
  );
}

function Head(props: { readonly card: Card }) {
  const sheet = useSheet();
  const kind = () => sheet.kinds[props.card.kind];
  return (
    <header>
      <Icon kind={props.card.kind} />
      <input
        class="name"
        aria-label={`Name of this ${kind()?.label ?? "card"}`}
        dir="auto"
        value={bare(props.card.title)}
        onChange={(event) => sheet.edit.renameCard(props.card, event.currentTarget.value)}
      />
      <span class="kind">{kind()?.label ?? props.card.kind}</span>
      <Show when={!kind()?.single} fallback={<span />}>
        <Menu card={props.card} />
      </Show>
      <button
        type="button"
        class="fold"
        aria-expanded="true"
        aria-label={`Fold ${props.card.title} up`}
        title="Fold this card up"
        onClick={() => sheet.edit.unfold(props.card.id, false)}
      />
    </header>
  );
}

const sameRows = (one: readonly Row[], other: readonly Row[]): boolean =>
  one.length === other.length && one.every((row, index) => row === other[index]);

function Body(props: { readonly card: Card }) {
  const sheet = useSheet();
  const applies = ({ name, when, quiet }: Row): boolean => {
    if (quiet && sheet.result(`${props.card.id}.${name}`)?.state === "none") return false;
    if (!when) return true;
    const result = sheet.result(`${props.card.id}.${when.row}`);
    return isReady(result) && (when.is?.includes(String(valueIn(result))) ?? true);
  };
  const rows = createMemo(
    () =>
      (sheet.kinds[props.card.kind]?.rows ?? []).filter((row) => !row.hidden && !row.lead && applies(row)),
    [],
    { equals: sameRows },
  );
  const leads = () => (sheet.kinds[props.card.kind]?.rows ?? []).filter((row) => row.lead && !row.hidden);
  const main = () => rows().filter((row) => !row.minor);
  const minor = () => rows().filter((row) => row.minor);
  // A memo, so that an edit of the card does not close what the reader opened.
  const minorOpen = createMemo(() =>
    minor().some((row) => sheet.opened() === `${props.card.id}.${row.name}`),
  );
  const unknown = () => sheet.problems().find((problem) => problem.at === props.card.id);
  return (
    <>
      <Head card={props.card} />
      <Show when={unknown()}>{(problem) => <p class="wrong">{problem().text}</p>}</Show>
      <For each={leads()}>{(row) => <LeadRow card={props.card} row={row} />}</For>
      <Show when={sheet.kinds[props.card.kind]?.record}>
        <RainPicker />
      </Show>
      <For each={main().filter(isGiven)}>{(row) => <RowView card={props.card} row={row} />}</For>
      <For each={main().filter((row) => !isGiven(row))}>
        {(row) => <RowView card={props.card} row={row} />}
      </For>
      <Figures card={props.card} />
      <SizeCurve card={props.card} />
      <Show when={sheet.kinds[props.card.kind]?.views}>
        {(views) => (
          <>
            <ThroughYear card={props.card} row={views().year} />
            <BySeason card={props.card} seasons={views().seasons} days={views().days} />
          </>
        )}
      </Show>
      <Show when={minor().length > 0}>
        <details class="minor" open={minorOpen()}>
          <summary>More</summary>
          <For each={minor()}>{(row) => <RowView card={props.card} row={row} />}</For>
        </details>
      </Show>
    </>
  );
}

export function CardView(props: { readonly card: Card }) {
  const sheet = useSheet();
  return (
    <article class="card" id={props.card.id} aria-label={props.card.title} tabindex="-1">
      <Show when={sheet.unfolded(props.card.id)} fallback={<FoldedCard card={props.card} />}>
        <Body card={props.card} />
      </Show>
    </article>
  );
}
