// The whole page: header, answers, what is wrong, the chart, the cards.

import { For, Show } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import type { Card } from "../../document/worksheet.ts";
import { groupsOf, isBare, offered } from "../../kinds/kind.ts";
import { Drawing } from "../charts/Drawing.tsx";
import { StoredWater } from "../charts/StoredChart.tsx";
import { LayOut } from "../dialogs/LayOut.tsx";
import { ShareTool } from "../dialogs/ShareDialog.tsx";
import { StartDialog } from "../dialogs/StartDialog.tsx";
import { useSheet } from "../sheet.ts";
import { Answers } from "./Answers.tsx";
import { CardView } from "./CardView.tsx";
import { KeepingBar } from "./KeepingBar.tsx";
import { NextNumber } from "./NextNumber.tsx";
import { PrintedPage } from "./PrintedPage.tsx";
import { WeekPlan } from "./WeekPlan.tsx";

const TURNS = {
  Undo: "M8 4 3 9l5 5M3 9h11a6 6 0 0 1 0 12h-4",
  Redo: "M16 4l5 5-5 5M21 9H10a6 6 0 0 0 0 12h4",
} as const;

function Turn(props: {
  readonly name: keyof typeof TURNS;
  readonly what: string | null;
  readonly onTurn: () => void;
}) {
  return (
    <button
      type="button"
      class="tool turn"
      aria-label={props.name}
      disabled={!props.what}
      title={props.what ? `${props.name}: ${props.what}` : props.name}
      onClick={() => props.onTurn()}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path d={TURNS[props.name]} />
      </svg>
    </button>
  );
}

function Tools(props: { readonly onStart: () => void }) {
  const sheet = useSheet();
  return (
    <nav class="tools" aria-label="Worksheet">
      <Turn name="Undo" what={sheet.canUndo()} onTurn={() => sheet.edit.undo()} />
      <Turn name="Redo" what={sheet.canRedo()} onTurn={() => sheet.edit.redo()} />
      <button type="button" class="tool" aria-pressed={sheet.held()} onClick={() => sheet.edit.hold()}>
        {sheet.held() ? "Let go" : "Hold"}
      </button>
      <button type="button" class="tool" onClick={() => props.onStart()}>
        Worksheets
      </button>
      <WeekPlan />
      <ShareTool />
      <button type="button" class="tool" onClick={() => window.print()}>
        Print
      </button>
    </nav>
  );
}

function Header() {
  const sheet = useSheet();
  let dialog: HTMLDialogElement | undefined;
  return (
    <header class="width top">
      <input
        class="title"
        aria-label="Name of this worksheet"
        dir="auto"
        value={bare(sheet.worksheet().title)}
        onChange={(event) => sheet.edit.page({ title: event.currentTarget.value })}
      />
      <span class="saved" role="status">
        {sheet.saved()}
      </span>
      <Show when={sheet.madeUp()}>{(text) => <span class="madeup">{text()}</span>}</Show>
      <Show when={sheet.starter()}>
        <button type="button" class="tool own" onClick={() => sheet.edit.start(null)}>
          Start my own
        </button>
      </Show>
      <label>
        <span class="unseen">Units</span>
        <select
          value={sheet.worksheet().units}
          onChange={(event) => sheet.edit.units(event.currentTarget.value as "us" | "imperial" | "metric")}
        >
          <option value="us">feet and US gallons</option>
          <option value="imperial">feet and imperial gallons</option>
          <option value="metric">metres and litres</option>
        </select>
      </label>
      <Tools
        onStart={() => {
          sheet.keep.lookAgain();
          dialog?.showModal();
        }}
      />
      <StartDialog
        register={(element) => {
          dialog = element;
        }}
      />
    </header>
  );
}

/** Cards by their ids, so that an edit changes a card in place and the field being typed in keeps the focus. */
function Cards(props: { readonly cards: readonly Card[] }) {
  const ids = () => props.cards.map((card) => card.id);
  return (
    <For each={ids()}>
      {(id) => (
        <Show when={props.cards.find((card) => card.id === id)}>{(card) => <CardView card={card()} />}</Show>
      )}
    </For>
  );
}

function GroupView(props: { readonly group: ReturnType<typeof groupsOf>[number] }) {
  const sheet = useSheet();
  const cards = () =>
    props.group.kinds.flatMap(({ kind }) => sheet.worksheet().cards.filter((card) => card.kind === kind));
  const kinds = () => offered(props.group.kinds, sheet.worksheet().cards);
  return (
    <Show when={cards().length > 0 || kinds().length > 0}>
      <section class="width group" aria-label={props.group.title}>
        <header>
          <h2>{props.group.title}</h2>
          <For each={kinds()}>
            {(kind) => (
              <button type="button" class="add" title={kind.purpose} onClick={() => sheet.edit.addCard(kind)}>
                + {kind.label}
              </button>
            )}
          </For>
        </header>
        <div class="cards">
          <Cards cards={cards()} />
        </div>
      </section>
    </Show>
  );
}

function Unknown() {
  const sheet = useSheet();
  const cards = () => sheet.worksheet().cards.filter((card) => !sheet.kinds[card.kind]);
  return (
    <Show when={cards().length > 0}>
      <section class="width group" aria-label="Cards this version does not know">
        <h2>Cards this version does not know</h2>
        <div class="cards">
          <Cards cards={cards()} />
        </div>
      </section>
    </Show>
  );
}

export function Page() {
  const sheet = useSheet();
  return (
    <>
      <a class="skip" href="#cards">
        To the cards
      </a>
      <Header />
      <main class="bench">
        <div class="view">
          <KeepingBar />
          <Answers />
          <Drawing />
          <StoredWater />
        </div>
        <div class="parts">
          <Show when={isBare(sheet.kinds, sheet.worksheet().cards)}>
            <LayOut />
          </Show>
          <div id="cards">
            <For each={groupsOf(sheet.kinds)}>{(group) => <GroupView group={group} />}</For>
            <Unknown />
          </div>
        </div>
        <PrintedPage />
      </main>
      <NextNumber />
      <footer class="width foot">
        <p>
          Heights are above {sheet.worksheet().datum || "a zero of your choice"}. Made by{" "}
          {sheet.worksheet().made_by || "nobody named"} on {sheet.worksheet().made_on}.
        </p>
        <p>
          Everything is worked out on this device; nothing is sent anywhere. Figures are estimates for
          planning: local codes and licensed people decide on wiring, stands, drinking water and backflow.
        </p>
        <p>
          Version {sheet.keep.version}
          {sheet.keep.ready() ? ", kept on this device: it opens with no network" : ""}.
        </p>
      </footer>
    </>
  );
}
