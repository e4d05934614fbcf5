// The open part, whatever its kind: its neighbours, its name, its given numbers, its results, and the rest when asked for.

import { createComputed, createMemo, createSignal, For, onMount, Show } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import type { Card } from "../../document/worksheet.ts";
import { isMet } from "../../graph/row-when.ts";
import type { Row } from "../../graph/types.ts";
import { keepBeside, showInTime } from "../beside/show.ts";
import { BySeason } from "../charts/BySeason.tsx";
import { Figures } from "../charts/Figures.tsx";
import { ThroughYear } from "../charts/ThroughYear.tsx";
import { RainPicker } from "../dialogs/RainPicker.tsx";
import { Hand } from "../hand/Hand.tsx";
import { Moved } from "../hand/Moved.tsx";
import { CautionFoot, Cautions } from "../rows/Cautions.tsx";
import { LeadRow } from "../rows/LeadRow.tsx";
import { RowView } from "../rows/Rows.tsx";
import { isGiven } from "../rows/row-kinds.ts";
import { createTyped, titleField } from "../rows/typed-text.ts";
import { SheetContext, useSheet } from "../sheet.ts";
import { Beside } from "./Beside.tsx";
import { Icon } from "./Icon.tsx";
import { Adding } from "./PartList.tsx";
import { PartMenu } from "./PartMenu.tsx";
import type { Parts } from "./parts.ts";

function Name(props: { readonly card: Card }) {
  const sheet = useSheet();
  const kind = () => sheet.kinds[props.card.kind];
  const [draft, setDraft] = createTyped(sheet, () => titleField.of(props.card.id));
  return (
    <header class="named">
      <Icon kind={props.card.kind} />
      <input
        class="name"
        aria-label={`Name of this ${kind()?.label ?? "card"}`}
        dir="auto"
        value={draft() ?? bare(props.card.title)}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onChange={(event) => {
          sheet.edit.renameCard(props.card, event.currentTarget.value);
          setDraft(null);
        }}
      />
      <span class="kind">{kind()?.label ?? props.card.kind}</span>
      {/* On a phone it stands beside the name at the head (Beside.tsx). */}
      <Show when={!kind()?.single && sheet.looking.width() !== "phone"}>
        <PartMenu card={props.card} />
      </Show>
    </header>
  );
}

const sameRows = (one: readonly Row[], other: readonly Row[]): boolean =>
  one.length === other.length && one.every((row, index) => row === other[index]);

/** What a part's rows look like drawn. */
function Charts(props: { readonly card: Card }) {
  const sheet = useSheet();
  return (
    <>
      <Figures card={props.card} />
      <Show when={sheet.kinds[props.card.kind]?.views}>
        {(views) => (
          <>
            <ThroughYear card={props.card} row={views().year} />
            <BySeason card={props.card} seasons={views().seasons} days={views().days} />
          </>
        )}
      </Show>
    </>
  );
}

/** What is folded away; what is asked for among it is shown. */
function Minor(props: { readonly card: Card; readonly rows: readonly Row[] }) {
  const sheet = useSheet();
  const [isOpen, setOpen] = createSignal(false);
  // An edit of the card does not close what the reader opened.
  createComputed(() => {
    const wanted = [sheet.looking.sought(), sheet.opened(), sheet.looking.inHand()];
    if (props.rows.some((row) => wanted.includes(`${props.card.id}.${row.name}`))) setOpen(true);
  });
  return (
    <>
      <details
        class="minor"
        open={isOpen()}
        onToggle={(event) => {
          setOpen(event.currentTarget.open);
        }}
      >
        <summary>All its numbers ({props.rows.length})</summary>
        <Show when={isOpen()}>
          <For each={props.rows}>{(row) => <RowView card={props.card} row={row} />}</For>
        </Show>
      </details>
      {/* A caution that its number sets off is seen whether or not that number is folded away. */}
      <Show when={!isOpen()}>
        <For each={props.rows}>{(row) => <Cautions card={props.card} beside={row.name} />}</For>
      </Show>
    </>
  );
}

function Body(props: { readonly card: Card }) {
  const sheet = useSheet();
  const applies = ({ name, when, quiet }: Row): boolean => {
    if (quiet && sheet.result(`${props.card.id}.${name}`)?.state === "none") return false;
    return isMet(when, when && sheet.result(`${props.card.id}.${when.row}`));
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
  const unknown = () => sheet.problems().find((problem) => problem.at === props.card.id);
  return (
    <>
      <Show when={unknown()}>{(problem) => <p class="wrong">{problem().text}</p>}</Show>
      <For each={leads()}>{(row) => <LeadRow card={props.card} row={row} />}</For>
      <Show when={sheet.kinds[props.card.kind]?.record}>
        <RainPicker />
      </Show>
      <For each={main().filter(isGiven)}>{(row) => <RowView card={props.card} row={row} />}</For>
      <Show when={main().some((row) => !isGiven(row))}>
        <h2 class="so">So</h2>
      </Show>
      <For each={main().filter((row) => !isGiven(row))}>
        {(row) => <RowView card={props.card} row={row} />}
      </For>
      <Show when={props.card.id === "cost"}>
        <button type="button" class="act" onClick={() => showInTime(sheet, "money")}>
          Next money: what to buy
        </button>
      </Show>
      <SheetContext.Provider value={sheet.late()}>
        <Charts card={props.card} />
      </SheetContext.Provider>
      <Show when={minor().length > 0}>
        <Minor card={props.card} rows={minor()} />
      </Show>
    </>
  );
}

/** The other parts of its group, and what can be added to it. */
function Kin(props: { readonly card: Card; readonly parts: Parts }) {
  const sheet = useSheet();
  const group = () => props.parts.groups().find(({ cards }) => cards.some(({ id }) => id === props.card.id));
  const others = () => group()?.cards.filter(({ id }) => id !== props.card.id) ?? [];
  return (
    <Show when={group()}>
      {(kin) => (
        <p class="kin">
          <span>{kin().title}:</span>
          <For each={others().map(({ id }) => id)}>
            {(id) => (
              <button type="button" class="link" onClick={() => sheet.edit.goTo(id)}>
                {props.parts.titleOf(id)}
              </button>
            )}
          </For>
          <Adding group={kin()} />
        </p>
      )}
    </Show>
  );
}

/** A finger drawn across the rows goes to the part before or after; what slides by itself is left to slide. */
function createSwipe(parts: Parts, goTo: (id: string) => void) {
  const FAR = 70;
  let from: { readonly x: number; readonly y: number } | null = null;
  return {
    onPointerDown: (event: PointerEvent): void => {
      const isOwn = event.target instanceof Element && event.target.closest("input, select, svg, .scrolls");
      from = event.pointerType === "touch" && !isOwn ? { x: event.clientX, y: event.clientY } : null;
    },
    onPointerUp: (event: PointerEvent): void => {
      const [across, down] = [event.clientX - (from?.x ?? 0), event.clientY - (from?.y ?? 0)];
      const isSwipe = from !== null && Math.abs(across) > FAR && Math.abs(across) > 2 * Math.abs(down);
      from = null;
      const id = isSwipe ? parts.along(across < 0 ? 1 : -1) : null;
      if (id !== null) goTo(id);
    },
    onPointerCancel: (): void => {
      from = null;
    },
  };
}

/** A part is seen from its head on: in its own scroll, or where the page scrolls, below what stays at the head of that. */
function toItsHead(part: HTMLElement): void {
  part.closest(".zone-part")?.scrollTo({ top: 0 });
  if (part.getBoundingClientRect().top < 0) part.scrollIntoView({ block: "start" });
}

/** The open part: what stands before and after it, its name, what is in hand, its rows. */
export function Part(props: { readonly card: Card; readonly parts: Parts }) {
  const sheet = useSheet();
  const isPhone = () => sheet.looking.width() === "phone";
  const swipe = createSwipe(props.parts, sheet.edit.goTo);
  let part: HTMLElement | undefined;
  // Before its rows: one of them that is in hand or asked for comes into view after it.
  onMount(() => part && toItsHead(part));
  return (
    <article
      class="card"
      id={props.card.id}
      aria-label={props.card.title}
      tabindex="-1"
      ref={part}
      {...swipe}
    >
      <Beside card={props.card} parts={props.parts} />
      <Show when={isPhone() && sheet.held() && !sheet.looking.inHand()}>
        <button type="button" class="link keep-line" onClick={() => keepBeside(sheet)}>
          Keep beside
        </button>
      </Show>
      <Show when={!isPhone()}>
        <Name card={props.card} />
        <Show
          when={sheet.looking.inHand()}
          fallback={
            <Show when={sheet.held() && sheet.looking.width() !== "wide"}>
              <Moved />
            </Show>
          }
        >
          <div class="zone-hand">
            <Hand />
          </div>
        </Show>
      </Show>
      <div class="rows">
        <Body card={props.card} />
        <Show when={isPhone()}>
          <Name card={props.card} />
        </Show>
        <Kin card={props.card} parts={props.parts} />
      </div>
      <CautionFoot card={props.card} />
    </article>
  );
}
