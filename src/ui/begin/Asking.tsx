// One number a screen: the place with the part washed, the question, the value, what follows from it already.

import { createEffect, createMemo, createSignal, For, on, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { asked, type Pick, type Picks } from "../../kinds/asking.ts";
import { unitLabel } from "../../units/show.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import type { Beginning, Begun } from "./beginning.ts";
import { unitOfField, usualOf } from "./reading.ts";
import { Sketch } from "./Sketch.tsx";
import { createWalk, firstOf, type Question, type Walk } from "./walk.ts";

const isNumber = ({ ask }: Question): boolean => ask.field !== undefined && ask.picked === undefined;
const LETTERS = /[a-z'"°]/i;

/** "number 3 of 12"; of what is picked nothing is counted. */
function Where(props: { readonly walk: Walk }) {
  const said = () => {
    const now = props.walk.question();
    const numbers = props.walk.all().filter(isNumber);
    const at = now ? numbers.findIndex(({ id }) => id === now.id) : -1;
    return at < 0 ? "nearly done" : `number ${at + 1} of ${numbers.length}`;
  };
  return <span class="soft">{said()}</span>;
}

function Typed(props: { readonly walk: Walk; readonly question: Question; readonly onEnter: () => void }) {
  const sheet = useSheet();
  const { walk } = props;
  const field = () => props.question.ask.field;
  const card = () => firstOf(props.question);
  const usual = () => {
    const of = field();
    const shown = of ? usualOf(sheet, card(), of) : "";
    return /\d/.test(shown) ? `usual: ${shown}` : "";
  };
  const unit = () => {
    const of = field();
    return of && !LETTERS.test(walk.text()) ? unitLabel(unitOfField(sheet, card(), of)) : "";
  };
  return (
    <>
      <div class="typed" classList={{ empty: field() === undefined }}>
        <input
          aria-label={asked(props.question)}
          aria-invalid={walk.wrong() !== null}
          aria-describedby="begin-hint"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          enterkeyhint="next"
          placeholder={usual()}
          value={walk.text()}
          // One field for all screens: where a keyboard is on the screen, it stays.
          ref={(input) => queueMicrotask(() => input.focus())}
          onInput={(event) => walk.type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            props.onEnter();
          }}
        />
        <span>{unit()}</span>
      </div>
      <Show when={walk.wrong()}>
        {(wrong) => (
          <p class="wrong" role="alert">
            {wrong()}
          </p>
        )}
      </Show>
    </>
  );
}

/** The number in a sentence stands in braces. */
function Says(props: { readonly text: string }) {
  return (
    <p class="says" role="status">
      <For each={props.text.split(/[{}]/)}>{(part, at) => (at() % 2 === 1 ? <b>{part}</b> : part)}</For>
    </p>
  );
}

function PickRow(props: { readonly walk: Walk; readonly picks: Picks }) {
  const [all, setAll] = createSignal(false);
  const picks = createMemo((): readonly Pick[] => {
    const known = props.walk.known();
    return known ? props.picks.picks(known) : [];
  });
  const seen = () =>
    picks().filter((pick) => all() || !pick.seldom || props.walk.isPicked(props.picks, pick));
  return (
    <fieldset>
      <legend>{props.picks.label}</legend>
      <div class="picks" classList={{ tall: props.picks.tall === true }}>
        <For each={seen()}>
          {(pick) => (
            <button
              type="button"
              class="pick"
              aria-pressed={props.walk.isPicked(props.picks, pick)}
              onClick={() => props.walk.pick(props.picks, pick)}
            >
              {pick.label}
            </button>
          )}
        </For>
        <Show when={!all() && seen().length < picks().length}>
          <button type="button" class="pick more" onClick={() => setAll(true)}>
            more …
          </button>
        </Show>
      </div>
    </fieldset>
  );
}

function Screen(props: { readonly walk: Walk; readonly question: Question }) {
  const { walk } = props;
  const says = () => {
    const known = walk.known();
    const isAnswered = props.question.said || walk.text().trim() !== "";
    return known && isAnswered && !walk.isUnread() ? props.question.ask.says?.(known) : null;
  };
  return (
    <>
      <h2 id="begin-asked" tabindex="-1">
        {asked(props.question)}
      </h2>
      <Show when={props.question.ask.field}>
        <Typed walk={walk} question={props.question} onEnter={() => walk.next()} />
      </Show>
      <p class="soft" id="begin-hint">
        {props.question.ask.hint}
      </p>
      <Show when={says()}>{(text) => <Says text={text()} />}</Show>
      <For each={props.question.ask.picks}>{(picks) => <PickRow walk={walk} picks={picks} />}</For>
      <Show when={props.question.cards.length > 1}>
        <button type="button" class="act" onClick={() => walk.split()}>
          They are not alike
        </button>
      </Show>
    </>
  );
}

/** What is asked for in the sketch; what is not drawn itself is seen where something drawn leans on it. */
function washedBy(sheet: Sheet, walk: Walk): string | null {
  const now = walk.question();
  if (!now) return null;
  const { id, kind } = firstOf(now);
  if (sheet.kinds[kind]?.drawn) return id;
  const leans = ({ givens }: Card) => Object.values(givens).some(({ value }) => value === id);
  return sheet.worksheet().cards.find(leans)?.id ?? null;
}

export function Asking(props: {
  readonly beginning: Beginning;
  readonly begun: Begun;
  readonly onClose: () => void;
}) {
  const sheet = useSheet();
  const walk = createWalk(sheet, props.beginning, props.begun.wish === null, () => props.onClose());
  const place = () => ({ worksheet: sheet.worksheet(), result: sheet.result });
  const back = (): void => {
    if (walk.back()) return;
    const { wish } = props.begun;
    if (wish) sheet.looking.begin({ ...props.begun, step: "count" });
    else props.onClose();
  };
  const isFirst = () => walk.index() === 0;
  const screen = createMemo(() => walk.question()?.id);
  let body: HTMLElement | undefined;
  const focusField = (): void => {
    const field = body?.querySelector<HTMLElement>(".typed input");
    (field ?? body?.querySelector<HTMLElement>("h2"))?.focus();
  };
  /** What cannot be gone on with stays ready to be typed anew. */
  const goOn = (by: () => void): void => {
    by();
    if (walk.wrong() !== null) focusField();
  };
  createEffect(
    on(screen, () => {
      body?.scrollTo({ top: 0 });
      focusField();
    }),
  );
  return (
    <>
      <header>
        <button type="button" class="back" onClick={back}>
          ‹ {isFirst() && props.begun.wish ? "What is there" : "Back"}
        </button>
        <Where walk={walk} />
      </header>
      <Sketch place={place()} washed={washedBy(sheet, walk)} />
      <section class="asked" ref={body}>
        <Show when={walk.question()}>{(question) => <Screen walk={walk} question={question()} />}</Show>
      </section>
      <footer>
        <button type="button" class="unsure" onClick={() => goOn(walk.notSure)}>
          Not sure
        </button>
        <button type="button" class="go" onClick={() => goOn(walk.next)}>
          {walk.isLast() ? "Done" : "Next ›"}
        </button>
      </footer>
    </>
  );
}
