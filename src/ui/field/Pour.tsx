// Water all, hold back or give up: the advice and its reason, what each would lose, and what each bed is to its grower.

import { For, Index, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ChoiceGiven } from "../../graph/types.ts";
import type { ToldAdvice, ToldChoice } from "../../telling/advice.ts";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";
import { Missing, useLack } from "./Missing.tsx";
import { FieldFoot, useNoting } from "./noting-here.tsx";
import { useOutOfSeason } from "./out-of-season.ts";
import type { FieldPageProps } from "./pages.ts";
import { useTold } from "./told.ts";
import { useSeasonAnswer } from "./use-season-answer.ts";
import "./pour.css";

/** What it loses in any case, soft, and what it loses over the best one. */
function LossBar(props: { readonly bar: number; readonly least: number }) {
  return (
    <div class="loss-bar" aria-hidden="true">
      <i class="anyhow" style={{ width: `${props.least * 100}%` }} />
      <i class="more" style={{ width: `${Math.max(0, props.bar - props.least) * 100}%` }} />
    </div>
  );
}

function Choice(props: { readonly told: ToldChoice; readonly least: number }) {
  return (
    <li classList={{ least: props.told.losesLeast }}>
      <p>
        <b>{props.told.name}</b>
        <Show when={props.told.losesLeast}>
          <span class="least-word"> loses least</span>
        </Show>
        <b class="loses">{props.told.loses}</b>
      </p>
      <LossBar bar={props.told.bar} least={props.least} />
      <p class="means">{props.told.means}</p>
    </li>
  );
}

function Worth(props: { readonly card: Card; readonly row: ChoiceGiven }) {
  const sheet = useSheet();
  const word = () => {
    const value = props.card.givens[props.row.name]?.value;
    return typeof value === "string" ? value : props.row.default;
  };
  const own = () => props.card.givens["worth_weight"] !== undefined;
  const pick = (value: string): void => {
    sheet.edit.given(props.card, props.row, { value, unit: "" });
    sheet.edit.settle();
  };
  return (
    <li>
      <h3>{props.card.title}</h3>
      <div class="thirds" role="radiogroup" aria-label={`What ${props.card.title} is to you`}>
        <For each={props.row.options}>
          {(option) => (
            <label>
              <input
                type="radio"
                name={`worth-${props.card.id}`}
                checked={word() === option.word}
                onChange={() => pick(option.word)}
              />
              {option.label}
            </label>
          )}
        </For>
      </div>
      <Show when={own()}>
        <p class="aside">It has a number of its own on the sheet, which counts instead.</p>
      </Show>
    </li>
  );
}

function Worths() {
  const sheet = useSheet();
  const beds = () =>
    sheet.worksheet().cards.flatMap((card) => {
      const row = sheet.kinds[card.kind]?.rows.find((one) => one.name === "worth");
      return row?.row === "choice" ? [{ card, row }] : [];
    });
  return (
    <section class="pour-worths">
      <h2>What each bed is to you</h2>
      <ul>
        <Index each={beds()}>{(bed) => <Worth card={bed().card} row={bed().row} />}</Index>
      </ul>
    </section>
  );
}

function Told(props: { readonly told: ToldAdvice }) {
  const least = () => Math.min(...props.told.choices.map(({ bar }) => bar));
  return (
    <>
      <div class="pour-lead" aria-live="polite">
        <p class="lead">
          <b>{props.told.lead.what}</b> {props.told.lead.rest}
        </p>
        <Show when={props.told.noted}>{(noted) => <p>{noted()}</p>}</Show>
        <p>{props.told.reason}</p>
      </div>
      <p class="pour-ways">
        <b>Counted for</b> {props.told.rule.here} As the sheet waters, which Today and How long go by,{" "}
        {props.told.rule.asSheet}.
      </p>
      <h2 class="pour-head">
        {props.told.head} <span>of what the beds are worth; solid: more than the best</span>
      </h2>
      <ul class="pour-choices">
        <For each={props.told.choices}>{(told) => <Choice told={told} least={least()} />}</For>
      </ul>
    </>
  );
}

/** Holds back today what the advice holds back, or lets it be watered again. */
function HoldBack(props: {
  readonly holds: NonNullable<ToldAdvice["holds"]>;
  readonly go: FieldPageProps["go"];
}) {
  const told = useTold();
  const { note } = useNoting();
  const titleOf = useTitleOf();
  const heldToday = (bed: string) => told.of(bed, "held").findLast(told.isToday);
  const press = (beds: readonly string[]): void => {
    const notes = beds.flatMap((bed) => heldToday(bed) ?? []);
    if (notes.length === beds.length) {
      for (const { id, where } of notes)
        note({ said: { what: "undid", where, undoes: id }, words: `${titleOf(where)}, watered as it asks` });
      return;
    }
    for (const where of beds)
      if (!heldToday(where))
        note({ said: { what: "held", where }, words: `${titleOf(where)}, held back today` });
    props.go("today");
  };
  return (
    <button type="button" class="pour-hold" onClick={() => press(props.holds.beds)}>
      {props.holds.beds.every(heldToday) ? "✓ Held back today" : props.holds.label}
    </button>
  );
}

/** What it rests on until something is noted; then that stands in the foot, and the rest of it above. */
export function Pour(props: FieldPageProps) {
  const { foot } = useNoting();
  const { answer, working, failure } = useSeasonAnswer((answers) => answers.advice());
  const lack = useLack(props);
  const outside = useOutOfSeason();
  return (
    <>
      <div class="field-body pour" classList={{ working: working() }} aria-busy={working()}>
        <Missing {...props} />
        <Show when={!lack()}>
          <Show
            when={answer()}
            fallback={<p class="pour-lead">{outside() || failure() || "Working it out …"}</p>}
          >
            {(told) => <Told told={told()} />}
          </Show>
          <Worths />
          <Show when={foot() && answer()}>{(told) => <p class="pour-rests">{told().rests}</p>}</Show>
        </Show>
      </div>
      <FieldFoot {...(answer() ? { unsaid: answer()?.rests ?? "" } : {})}>
        <Show when={answer()?.holds}>{(holds) => <HoldBack holds={holds()} go={props.go} />}</Show>
      </FieldFoot>
    </>
  );
}
