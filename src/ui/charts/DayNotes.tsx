// Under the drawing: what the waterings of the day that it shows lacked, bed by bed.

import { createMemo, For, Show } from "solid-js";
import { valueIn } from "../../graph/readers.ts";
import type { DayNotes as Notes } from "../../kinds/bed/gets.ts";
import { dayNote } from "../../telling/bed-day.ts";
import { showQuantity } from "../../units/show.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import type { DayPlayer } from "./day-player.ts";

/** A volume as one would say it. */
const SAID_FIGURES = 2;

function readyOf(sheet: Sheet, id: string): unknown {
  const result = sheet.result(id);
  if (result?.state === "pending") return result.last;
  return valueIn(result);
}

function sentences(sheet: Sheet, day: number): readonly string[] {
  const { cards } = sheet.worksheet();
  const titleOf = (id: unknown) => cards.find((card) => card.id === id)?.title ?? "another way";
  return cards.flatMap((card) => {
    const notes = readyOf(sheet, `${card.id}.day_notes`) as Notes | null;
    const ways = readyOf(sheet, `${card.id}.watered_by`);
    if (!notes) return [];
    const bed = { title: card.title, notes, ways: Array.isArray(ways) ? ways.map(titleOf) : [] };
    const text = dayNote(bed, day, (si, measure) =>
      showQuantity(si, measure, { ...sheet.showOptions(), figures: SAID_FIGURES }),
    );
    return text ? [text] : [];
  });
}

export function DayNotes(props: { readonly player: DayPlayer }) {
  const sheet = useSheet();
  const said = createMemo(() => {
    const [day, first] = [props.player.day(), sheet.stored()?.firstDay];
    // While a year plays they would only flicker.
    return day === null || first === undefined || props.player.playing() ? [] : sentences(sheet, day - first);
  });
  return (
    <Show when={said().length > 0}>
      <ul class="day-notes width">
        <For each={said()}>{(text) => <li>{text}</li>}</For>
      </ul>
    </Show>
  );
}
