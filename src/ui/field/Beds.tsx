// Beds: watered with the usual amount by one touch, and what is known of each at a glance.

import { createSignal, For, onCleanup, Show } from "solid-js";
import type { Card, Note } from "../../document/worksheet.ts";
import { numberIn, shownIn, valueIn } from "../../graph/readers.ts";
import type { WeekOfBed } from "../../kinds/season/week.ts";
import { amountSaid } from "../../scene/dip-level.ts";
import { onDay, wasOnDay } from "../../telling/today.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { showQuantity, unitFor } from "../../units/show.ts";
import { toSi } from "../../units/unit.ts";
import { useVoice, useWeekSpan } from "../page/plan-voice.ts";
import { useSheet } from "../sheet.ts";
import { shortWeekday } from "../words.ts";
import { type ToNote, useNoting } from "./noting-here.tsx";
import { useTold } from "./told.ts";

/** A volume of water in the worksheet's unit. */
function useVolumes() {
  const sheet = useSheet();
  const unit = () => unitFor("volume", sheet.worksheet().units);
  return {
    unit,
    /** As it is said and noted [unit]. */
    said: (si: number) => amountSaid(si, unit()),
    words: (value: number) =>
      showQuantity(toSi(value, unit()), "volume", { ...sheet.showOptions(), figures: 3 }),
  };
}

/** What a bed is given at once: as its grower says, else a good watering as the sheet works it out [m3]; null: not known. */
function useUsual() {
  const sheet = useSheet();
  return (card: Card): number | null => {
    const watered = sheet.kinds[card.kind]?.watered;
    if (!watered) return null;
    const row = (name: string) => numberIn(sheet.result(`${card.id}.${name}`));
    return row(watered.usual) ?? row(watered.volume);
  };
}

/** What is offered to be noted: the usual, of which no more than today's plan can give where that falls short [m3]. */
function useOffered() {
  const span = useWeekSpan();
  const usual = useUsual();
  return (card: Card): number | null => {
    const [most, plan] = [usual(card), span()];
    const today = plan ? parseIsoDate(plan.first) : null;
    const line = plan?.lines.find(({ bed, day, why }) => bed === card.id && day === today && why !== null);
    return most === null || !line ? most : Math.min(most, line.volume);
  };
}

/** Whether today could give a bed as much again as a watering: nothing binds it today, and its tank has so much. */
function useCanDouble() {
  const span = useWeekSpan();
  return (card: Card, by: string | undefined, more: number): boolean => {
    const plan = span();
    if (!plan || by === undefined) return false;
    const today = parseIsoDate(plan.first);
    const isToday = (one: { readonly bed: string; readonly day: number }) =>
      one.bed === card.id && one.day === today;
    if ([...plan.lines, ...plan.refused].some((one) => isToday(one) && one.why !== null)) return false;
    return (plan.now[plan.tankBy[by] ?? ""] ?? 0) >= more;
  };
}

/** A watering to be noted, which half and double of it set right. */
function useWatering() {
  const sheet = useSheet();
  const volumes = useVolumes();
  const usual = useUsual();
  const canDouble = useCanDouble();
  const means = (card: Card): Pick<Note, "by"> => {
    const watered = sheet.kinds[card.kind]?.watered;
    const ids = watered ? valueIn(sheet.result(`${card.id}.${watered.by}`)) : null;
    const first: unknown = Array.isArray(ids) ? ids[0] : null;
    return typeof first === "string" ? { by: first } : {};
  };
  /**
   * @param again: offers the same once more, beside it
   * @param top: what it was before it was halved, to go back to
   */
  const gave = (card: Card, value: number, again = false, top = value): ToNote => ({
    said: { what: "gave", where: card.id, value, unit: volumes.unit(), ...means(card) },
    words: `${card.title}, ${volumes.words(value)}`,
    // Its usual amount may be several tubfuls; what is more is asked about.
    ...(value <= volumes.said(usual(card) ?? 0) ? { sure: true as const } : {}),
    instead: [
      { over: "half", label: volumes.words(value / 2), to: () => gave(card, value / 2, false, top) },
      // Noted already, it is out of the tank; else both have to be in it.
      ...(value * 2 <= top || canDouble(card, means(card).by, toSi(value * (again ? 1 : 2), volumes.unit()))
        ? [{ over: "double", label: volumes.words(value * 2), to: () => gave(card, value * 2, false, top) }]
        : []),
      ...(again
        ? [
            {
              over: "again",
              label: volumes.words(value),
              beside: true as const,
              to: () => gave(card, value),
            },
          ]
        : []),
    ],
  });
  return gave;
}

/** "today 42 gal", "today 40 of 75 gal", "today none of 75 gal", "can wait to Thu": what the plan says of it. */
function useAsks() {
  const sheet = useSheet();
  const span = useWeekSpan();
  const voice = useVoice();
  const { weekBefore } = useNoting();
  return (card: Card): string => {
    const row = sheet.kinds[card.kind]?.views?.week;
    const week = row === undefined ? null : (shownIn(sheet.result(`${card.id}.${row}`)) as WeekOfBed | null);
    const plan = span();
    if (!week || !plan) return "";
    const { show } = voice();
    const today = parseIsoDate(week.today) ?? 0;
    const now = onDay(plan, card.id, today, show);
    const was = wasOnDay(weekBefore(plan.first), plan, card.id, today, show);
    if (now !== "") return [`today ${now}`, ...(was === "" ? [] : [`was ${was}`])].join(", ");
    const next = week.waterings.find(({ date }) => date > today);
    return next ? `can wait to ${shortWeekday(next.date)}` : "can wait all week";
  };
}

function Bed(props: { readonly card: Card }) {
  const told = useTold();
  const asks = useAsks();
  const usual = useUsual();
  const offered = useOffered();
  const volumes = useVolumes();
  const gave = useWatering();
  const { note, recall } = useNoting();
  const waterings = () => told.of(props.card.id, "gave", "soaked");
  const today = () => waterings().findLast((one) => told.isToday(one));
  const amount = (one: Note) => (one.value === undefined ? "soaked" : volumes.words(one.value));
  /** What was noted of it today, with all that can be made of it. */
  const again = (done: Note): ToNote => {
    const value = done.value ?? usual(props.card);
    if (done.what === "gave" && value !== null) return gave(props.card, value, true);
    return { said: { what: done.what, where: props.card.id }, words: `${props.card.title}, soaked through` };
  };
  const state = () => {
    const [done, last] = [today(), waterings().at(-1)];
    if (done) return `${amount(done)}, ${told.when(done)}`;
    return [last ? `last ${told.when(last)}` : "", asks(props.card)].filter((said) => said !== "").join(", ");
  };
  return (
    <li class="field-bed">
      <div>
        <h3>{props.card.title}</h3>
        <p class="aside">{state()}</p>
      </div>
      <Show
        when={today()}
        fallback={
          <Show when={offered(props.card)} fallback={<p class="aside">asks for no water</p>}>
            {(volume) => (
              <button
                type="button"
                aria-label={`Watered ${volumes.words(volumes.said(volume()))}: ${props.card.title}`}
                onClick={() => note(gave(props.card, volumes.said(volume())))}
              >
                Watered {volumes.words(volumes.said(volume()))}
              </button>
            )}
          </Show>
        }
      >
        {(done) => (
          <button
            type="button"
            class="done"
            aria-label={`Watered: ${props.card.title}, ${state()}. Set right`}
            onClick={() => recall(done().id, again(done()))}
          >
            ✓ Watered
          </button>
        )}
      </Show>
    </li>
  );
}

/** How many beds lie below what is seen of the list. */
function createBelow() {
  const [below, setBelow] = createSignal(0);
  let list: HTMLUListElement | undefined;
  const look = (): void => {
    if (!list) return;
    const foot = list.getBoundingClientRect().bottom;
    const hidden = [...list.children].filter((bed) => {
      const { top, height } = bed.getBoundingClientRect();
      return top + height / 2 > foot;
    });
    setBelow(hidden.length);
  };
  const sizes = new ResizeObserver(look);
  onCleanup(() => sizes.disconnect());
  return {
    below,
    look,
    watch: (element: HTMLUListElement): void => {
      list = element;
      sizes.observe(element);
    },
    turn: (): void => list?.scrollBy({ top: list.clientHeight }),
  };
}

export function Beds(props: { readonly cards: readonly Card[] }) {
  const { below, look, watch, turn } = createBelow();
  return (
    <>
      <ul class="field-beds" aria-label="Beds" ref={watch} onScroll={look}>
        <For each={props.cards.map(({ id }) => id)}>
          {(id) => (
            <Show when={props.cards.find((card) => card.id === id)}>{(card) => <Bed card={card()} />}</Show>
          )}
        </For>
      </ul>
      <Show when={below() > 0}>
        <button type="button" class="field-below" onClick={turn}>
          {below()} more {below() === 1 ? "bed" : "beds"}
          <span aria-hidden="true"> ▾</span>
        </button>
      </Show>
    </>
  );
}
