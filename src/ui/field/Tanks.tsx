// Tanks as columns, two a page where there are three and more, and the rain gauge beside them.

import { createMemo, createSignal, For, Show } from "solid-js";
import { uncountedDips } from "../../document/note-question.ts";
import type { Card, Note } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import {
  depthHolding,
  gaugeStick,
  heldAt,
  type Level,
  levelAt,
  readAs,
  type Stick,
  tankStick,
} from "../../scene/dip-level.ts";
import { showQuantity } from "../../units/show.ts";
import { toSi } from "../../units/unit.ts";
import { useWeekSpan } from "../page/plan-voice.ts";
import { useSheet } from "../sheet.ts";
import { atRest, Column, createMoving } from "./Column.tsx";
import { type ToNote, useAsking, useNoting } from "./noting-here.tsx";
import { useTold } from "./told.ts";

type Vessel = Parameters<typeof tankStick>[0];

/** Where a tank that nobody dipped is held until it is, and where the gauge stands when it was emptied. */
const HALFWAY = 0.5;
const EMPTY = 0;

const stepWords = (stick: Stick, by: number): string =>
  `${by < 0 ? "−" : "+"}${readAs(stick.step, stick)} ${stick.unit}`;

/** A level to be noted, which a step of the stick sets right. */
function levelNote(stick: Stick, level: Level, said: (level: Level) => Omit<ToNote, "instead">): ToNote {
  const others = [-1, 1].map((by) => ({
    by,
    level: levelAt(stick, toSi(level.value + by * stick.step, stick.unit)),
  }));
  return {
    ...said(level),
    instead: others
      .filter((other) => other.level.value !== level.value)
      .map((other) => ({
        label: stepWords(stick, other.by),
        to: () => levelNote(stick, other.level, said),
      })),
  };
}

/** Dips of a tank that count, the newest last. */
function useDips(card: () => Card): () => readonly Note[] {
  const told = useTold();
  const asking = useAsking();
  return () => {
    const noted = told.of(card().id, "dipped");
    const uncounted = new Set(uncountedDips(asking(), noted).map(({ note: { id } }) => id));
    return noted.filter(({ id }) => !uncounted.has(id));
  };
}

type TankProps = { readonly card: Card; readonly vessel: Vessel };

type Stands = { readonly dip: number | null; readonly depth: number | null };

/** How high its dip has come to stand by now, with what was noted since; a new dip itself until that is worked out. */
function useStandsNow(props: TankProps, isCounted: () => boolean, dip: () => number | null) {
  const sheet = useSheet();
  const span = useWeekSpan();
  const depth = (): number | null => {
    const week = span();
    const volume = week?.now[props.card.id];
    if (volume === undefined) return dip();
    // Where its last dip is not counted, an earlier one may be.
    const isCarriedOn = isCounted() || !week?.assumedTanks.includes(props.card.id);
    return isCarriedOn ? depthHolding(props.vessel, volume) : null;
  };
  // What was worked out stands while it is anew, but for what was dipped in between: lifted, the level would fall back.
  const worked = createMemo<Stands>(
    (before) =>
      sheet.result("season.week_span")?.state === "pending" ? before : { dip: dip(), depth: depth() },
    { dip: null, depth: null },
  );
  return (): number | null => (worked().dip === dip() ? worked().depth : dip());
}

function Tank(props: TankProps) {
  const sheet = useSheet();
  const told = useTold();
  const { note, foot } = useNoting();
  const stick = () => tankStick(props.vessel, sheet.worksheet().units === "metric" ? "cm" : "in");
  const level = () => sheet.result(`${props.card.id}.level_today`);
  const isCounted = () => isReady(sheet.result(`${props.card.id}.water_today`));
  const gallons = (at: Level) => showQuantity(heldAt(props.vessel, at), "volume", sheet.showOptions());
  const read = (at: Level) => readAs(at.value, stick());
  const dip = () => (isCounted() ? Number(valueIn(level())) : null);
  const now = useStandsNow(props, isCounted, dip);
  const isDipped = () => now() !== null;
  const resting = () => atRest(stick(), now(), HALFWAY);
  const isCarried = () => resting().value !== atRest(stick(), dip(), HALFWAY).value;
  const dipped = (at: Level): void =>
    note(
      levelNote(stick(), at, (to) => ({
        said: { what: "dipped", where: props.card.id, value: to.value, unit: stick().unit },
        words: `${props.card.title}, ${read(to)} ${stick().unit}, ${gallons(to)}`,
      })),
    );
  const moving = createMoving(stick, resting, dipped);
  const isKnown = () => isDipped() || moving.moving() !== null;
  const dips = useDips(() => props.card);
  /** The last dip before what is drawn: the very last where the level moves or has moved since, else the last of an earlier day. */
  const before = () =>
    moving.moving() || isCarried() ? dips().at(-1) : dips().findLast(({ day }) => day !== dips().at(-1)?.day);
  const unknown = () => (dips().length > 0 ? "not dipped lately" : "not dipped");
  const depthOf = ({ value = 0, unit = "" }: Note) => toSi(value, unit);
  const when = () => {
    const old = before();
    if (old) return `dashed: ${told.when(old)}`;
    const last = dips().at(-1);
    return last ? `dipped ${told.when(last)}` : "slide to its level";
  };
  return (
    <li class="field-column" classList={{ touched: foot()?.noted.said.where === props.card.id }}>
      <h3>{props.card.title}</h3>
      <p class="depth" classList={{ moved: moving.moving() !== null }}>
        {isKnown() ? read(moving.level()) : "–"} <span>{stick().unit}</span>
      </p>
      <p class="gallons">{isKnown() ? gallons(moving.level()) : unknown()}</p>
      <p class="aside">{when()}</p>
      <Column
        name={`Depth in ${props.card.title}`}
        said={isKnown() ? `${moving.level().value} ${stick().unit}, ${gallons(moving.level())}` : unknown()}
        stick={stick()}
        moving={moving}
        unknown={!isDipped()}
        dashed={before() ? { share: Math.min(1, depthOf(before() as Note) / stick().height) } : null}
      />
    </li>
  );
}

function Gauge() {
  const sheet = useSheet();
  const told = useTold();
  const { note, foot } = useNoting();
  const stick = () => gaugeStick(sheet.worksheet().units === "us" ? "in" : "mm");
  const words = (at: Level) => `${at.value} ${stick().unit}`;
  const moving = createMoving(
    stick,
    () => levelAt(stick(), EMPTY),
    (at) =>
      note(
        levelNote(stick(), at, (to) => ({
          said: { what: "rain", where: "site", value: to.value, unit: stick().unit },
          words: `rain, ${words(to)}; the gauge is empty again`,
        })),
      ),
  );
  const last = () => told.of("site", "rain").at(-1);
  /** Where nobody moves it, nothing is read: that is not a gauge without rain. */
  const isRead = () => moving.moving() !== null;
  return (
    <li class="field-column gauge" classList={{ touched: foot()?.noted.said.what === "rain" }}>
      <h3>Gauge</h3>
      <p class="depth">
        {isRead() ? moving.level().value : "–"} <span>{stick().unit}</span>
      </p>
      <p class="gallons">{isRead() && moving.level().value === 0 ? "no rain" : "rain"}</p>
      <p class="aside">
        <Show when={last()} fallback="not noted">
          {(held) => `since ${told.when(held())}`}
        </Show>
      </p>
      <Column
        name="Rain in the gauge"
        said={isRead() ? words(moving.level()) : "not read"}
        stick={stick()}
        moving={moving}
        unknown={false}
        dashed={null}
      />
    </li>
  );
}

/** Tanks a page, where there are more than that. */
const A_PAGE = 2;
/** A swipe is at least so long, and longer than it is high [px]. */
const SWIPE = 48;

function Pager(props: {
  readonly page: number;
  readonly tanks: number;
  readonly onTurn: (by: number) => void;
}) {
  const first = () => props.page * A_PAGE + 1;
  const last = () => Math.min(props.tanks, first() + A_PAGE - 1);
  const pages = () => Math.ceil(props.tanks / A_PAGE);
  return (
    <div class="field-pager">
      <button type="button" disabled={props.page === 0} onClick={() => props.onTurn(-1)}>
        <span aria-hidden="true">‹ </span>before
      </button>
      <p>
        <b>{first() === last() ? first() : `${first()}–${last()}`}</b> of {props.tanks} tanks
      </p>
      <button type="button" disabled={props.page + 1 >= pages()} onClick={() => props.onTurn(1)}>
        next<span aria-hidden="true"> ›</span>
      </button>
    </div>
  );
}

export function Tanks(props: { readonly cards: readonly Card[] }) {
  const sheet = useSheet();
  const [page, setPage] = createSignal(0);
  const isPaged = () => props.cards.length > A_PAGE;
  // By their ids: a note makes a card anew, and its slider keeps the finger and the focus all the same.
  const shown = createMemo(() => {
    const ids = props.cards.map(({ id }) => id);
    return isPaged() ? ids.slice(page() * A_PAGE, (page() + 1) * A_PAGE) : ids;
  });
  const turn = (by: number): void => {
    const last = Math.ceil(props.cards.length / A_PAGE) - 1;
    setPage(Math.max(0, Math.min(last, page() + by)));
  };
  let from: { readonly x: number; readonly y: number } | null = null;
  const swiped = ({ clientX, clientY }: PointerEvent): void => {
    const [x, y] = [clientX - (from?.x ?? clientX), clientY - (from?.y ?? clientY)];
    from = null;
    if (isPaged() && Math.abs(x) > SWIPE && Math.abs(x) > Math.abs(y)) turn(x < 0 ? 1 : -1);
  };
  const vessel = (id: string) => valueIn(sheet.result(`${id}.vessel`)) as Vessel | null;
  return (
    <>
      <ul
        class="field-tanks"
        classList={{ paged: isPaged(), lone: props.cards.length === 1, none: props.cards.length === 0 }}
        onPointerDown={(event) => {
          const onGrip = event.target instanceof Element && event.target.closest(".grip");
          from = onGrip ? null : { x: event.clientX, y: event.clientY };
        }}
        onPointerUp={swiped}
      >
        <For each={shown()}>
          {(id) => (
            <Show when={props.cards.find((card) => card.id === id)}>
              {(card) => (
                <Show
                  when={vessel(id)}
                  fallback={
                    <li class="field-column">
                      <h3>{card().title}</h3>
                      <p class="aside">Its size is not known.</p>
                    </li>
                  }
                >
                  {(held) => <Tank card={card()} vessel={held()} />}
                </Show>
              )}
            </Show>
          )}
        </For>
        <Gauge />
      </ul>
      <Show when={isPaged()}>
        <Pager page={page()} tanks={props.cards.length} onTurn={turn} />
      </Show>
    </>
  );
}
