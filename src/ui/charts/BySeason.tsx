// A bed's seasons one by one as a table; pressing a year shows the bed's days of that season.

import { createMemo, createSignal, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { shownIn } from "../../graph/readers.ts";
import { textOrDate } from "../../graph/shown.ts";
import type { BedYear } from "../../kinds/bed/years.ts";
import type { CalendarDay, CalendarOfBed } from "../../kinds/season/week.ts";
import { monthSheet } from "../../scene/month-sheet.ts";
import type { Frame } from "../../scene/plot-marks.ts";
import { dayFacts, type Show as ShowNumber, seasonFacts, wateringFacts } from "../../telling/bed-day.ts";
import { whyShortThen } from "../../telling/words/bounds.ts";
import { showQuantity } from "../../units/show.ts";
import { useGiven } from "../rows/given-of.ts";
import { useSheet } from "../sheet.ts";
import { Chart } from "./Chart.tsx";

const FIGURES = 2;
/** A month is so high [px]. */
const ROW = 17;

function useShow(): ShowNumber {
  const sheet = useSheet();
  return (si, measure) => showQuantity(si, measure, { ...sheet.showOptions(), figures: FIGURES });
}

/** A day with its date as people write it. */
function useDated() {
  const sheet = useSheet();
  return (day: CalendarDay): CalendarDay => ({
    ...day,
    date: textOrDate(day.date, sheet.showOptions().locale),
  });
}

/** The days on a sheet of months; the one under the finger or the mouse is told below it. */
function Sheet(props: { readonly days: readonly CalendarDay[]; readonly words: string }) {
  const show = useShow();
  const dated = useDated();
  const sheet = createMemo(() => monthSheet(props.days));
  const [told, setTold] = createSignal("");
  const tell = (frame: Frame, event: PointerEvent & { readonly currentTarget: SVGElement }): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    const day = sheet().at(
      frame.atX((x / box.width) * frame.width),
      frame.atY((y / box.height) * frame.height),
    );
    setTold(day ? dayFacts(dated(day), show) : "");
  };
  return (
    <div class="month-sheet">
      <Chart
        plot={sheet().plot}
        words={props.words}
        role="img"
        height={sheet().rows * ROW}
        margin={{ above: 2, below: 2 }}
      >
        {(frame) => (
          <rect
            class="under-finger"
            width={frame().width}
            height={frame().height}
            onPointerMove={(event) => tell(frame(), event)}
            onPointerDown={(event) => tell(frame(), event)}
          />
        )}
      </Chart>
      <p class="small">{told() || "Point at a day to read it."}</p>
    </div>
  );
}

/** The picked season's days, drawn and listed. */
function Days(props: { readonly calendar: CalendarOfBed }) {
  const show = useShow();
  const dated = useDated();
  const waterings = () => props.calendar.days.filter(({ asked, given }) => asked > 0 || given > 0);
  const words = () => seasonFacts(props.calendar.year, props.calendar.days);
  return (
    <div class="calendar">
      <p>{words()}</p>
      <Sheet days={props.calendar.days} words={words()} />
      <p class="keys">
        <span>
          <i class="need" aria-hidden="true" /> watered
        </span>
        <span>
          <i class="drop" aria-hidden="true" /> rain that counts
        </span>
        <span>
          <b aria-hidden="true">×</b> short
        </span>
        <span>
          <b aria-hidden="true">∕</b> given up
        </span>
      </p>
      <details>
        <summary>The waterings as a list</summary>
        <ul class="waterings">
          <For each={waterings()}>
            {(day) => <li>{wateringFacts(dated(day), props.calendar.driver, show)}</li>}
          </For>
        </ul>
      </details>
    </div>
  );
}

function Table(props: { readonly years: readonly BedYear[] }) {
  const show = useShow();
  const { put: look, value: looking } = useGiven("season.look_at_year");
  const loss = ({ loss: lost, crop }: BedYear) =>
    lost === null ? "not published" : `${show(lost, "share")}${crop ? ` (${crop})` : ""}`;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Season</th>
          <th scope="col">Needed</th>
          <th scope="col">Got</th>
          <th scope="col">Short days</th>
          <th scope="col">Harvest likely lost</th>
        </tr>
      </thead>
      <tbody>
        <For each={props.years}>
          {(year) => (
            <tr>
              <th scope="row">
                <button
                  type="button"
                  aria-pressed={looking() === year.year}
                  aria-label={`Show the days of ${year.year}`}
                  onClick={() => look(looking() === year.year ? null : year.year)}
                >
                  {year.year}
                </button>
              </th>
              <td>{show(year.need, "volume")}</td>
              <td>{show(year.got, "volume")}</td>
              <td title={year.binding ? whyShortThen(year.binding, year.driver) : ""}>
                {show(year.daysShort, "count")}
              </td>
              <td>{loss(year)}</td>
            </tr>
          )}
        </For>
      </tbody>
    </table>
  );
}

/** Table of seasons, and the days of the one that is looked at. */
export function BySeason(props: { readonly card: Card; readonly seasons: string; readonly days: string }) {
  const sheet = useSheet();
  const heldBy = (row: string): unknown => {
    const result = sheet.result(`${props.card.id}.${row}`);
    return shownIn(result);
  };
  const years = createMemo(() => heldBy(props.seasons) as readonly BedYear[] | null);
  const calendar = createMemo(() => heldBy(props.days) as CalendarOfBed | null);
  // A memo, so that picking a year does not close the table.
  const open = createMemo(() => calendar() !== null);
  return (
    <Show when={years()}>
      {(held) => (
        <details class="by-season" open={open()}>
          <summary>Season by season</summary>
          <Show when={calendar()}>{(shown) => <Days calendar={shown()} />}</Show>
          <p class="small">
            Press a year to see its days. What it got can be more than what it needed: rain that came after a
            watering, and water left in the soil at the end.
          </p>
          <section class="scrolls" aria-label={`${props.card.title}, season by season`}>
            <Table years={held()} />
          </section>
        </details>
      )}
    </Show>
  );
}
