// What was noted, latest first: read, looked through by part, taken back, and saved as a table.

import { createSignal, For, Show } from "solid-js";
import { inForce } from "../../document/note-order.ts";
import { noteSaid } from "../../document/note-words.ts";
import type { Note } from "../../document/worksheet.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { clockText } from "../../units/clock.ts";
import { MINUTE } from "../../units/constants.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";
import { dateWords } from "../words.ts";
import "./notes.css";
import { Missing } from "./Missing.tsx";
import { NotePanel } from "./NotePanel.tsx";
import { FieldFoot, useNoting } from "./noting-here.tsx";
import type { FieldPageProps } from "./pages.ts";
import { Uncounted } from "./Uncounted.tsx";

/** Notes on the page at once: many a day for many years are too many to draw. */
const AT_ONCE = 100;

type Day = { readonly day: string; readonly notes: readonly Note[] };

function byDay(notes: readonly Note[]): readonly Day[] {
  const days = new Map<string, Note[]>();
  for (const note of notes) days.set(note.day, [...(days.get(note.day) ?? []), note]);
  return [...days].map(([day, own]) => ({ day, notes: own }));
}

function NoteRow(props: {
  readonly note: Note;
  readonly title: string;
  readonly said: string;
  readonly isGone: boolean;
}) {
  const sheet = useSheet();
  const noting = useNoting();
  const at = () =>
    props.note.minute === undefined ? "" : clockText(props.note.minute * MINUTE, sheet.showOptions().locale);
  const takeBack = (): void =>
    noting.note({
      said: { what: "undid", where: props.note.where, undoes: props.note.id },
      words: `${props.title}, ${props.said}: taken back`,
    });
  return (
    <li class="note-row">
      <span class="at">{at()}</span>
      <span class="what">
        <b>{props.title}</b>
        <span>{props.said}</span>
        <Show when={props.isGone}>
          <span class="aside">No such part is on the sheet: nothing reckons with it.</span>
        </Show>
      </span>
      <button type="button" aria-label={`Take back: ${props.title}, ${props.said}`} onClick={takeBack}>
        Take back
      </button>
    </li>
  );
}

/** Notes under their days, the newest first. */
function NotedDays(props: { readonly notes: readonly Note[] }) {
  const sheet = useSheet();
  const titleOf = useTitleOf();
  const show = (si: number, measure: Parameters<typeof showQuantity>[1]) =>
    showQuantity(si, measure, sheet.showOptions());
  return (
    <For each={byDay(props.notes)}>
      {(one) => (
        <section>
          <h2>{parseIsoDate(one.day) === null ? one.day : dateWords(one.day, sheet.showOptions().locale)}</h2>
          <ul>
            <For each={one.notes}>
              {(note) => (
                <NoteRow
                  note={note}
                  title={titleOf(note.where)}
                  said={noteSaid(note, show, titleOf)}
                  isGone={!sheet.worksheet().cards.some(({ id }) => id === note.where)}
                />
              )}
            </For>
          </ul>
        </section>
      )}
    </For>
  );
}

export function Notes(props: FieldPageProps) {
  const sheet = useSheet();
  const [part, setPart] = createSignal("");
  const [shown, setShown] = createSignal(AT_ONCE);
  const [isNoting, setNoting] = createSignal(false);
  const titleOf = useTitleOf();
  const standing = () => [...inForce(sheet.worksheet().notes ?? [])].reverse();
  const parts = () =>
    [...new Set(standing().map(({ where }) => where))].sort((a, b) => (titleOf(a) < titleOf(b) ? -1 : 1));
  const wanted = () => standing().filter(({ where }) => part() === "" || where === part());
  return (
    <>
      <div class="field-body notes">
        <div class="notes-head">
          <label>
            <span>Notes of</span>
            <select
              onChange={(event) => {
                setPart(event.currentTarget.value);
                setShown(AT_ONCE);
              }}
            >
              <option value="">All parts</option>
              <For each={parts()}>{(id) => <option value={id}>{titleOf(id)}</option>}</For>
            </select>
          </label>
          <button type="button" onClick={() => setNoting(true)}>
            Note something
          </button>
          <button type="button" onClick={() => sheet.keep.saveTable("notes")}>
            Save as a table
          </button>
        </div>
        <Uncounted />
        <Show
          when={wanted().length > 0}
          fallback={
            <Missing {...props} undone="Nothing is noted yet. What you dip, water and read shows up here." />
          }
        >
          <NotedDays notes={wanted().slice(0, shown())} />
          <Show when={wanted().length > shown()}>
            <button type="button" class="notes-more" onClick={() => setShown(shown() + AT_ONCE)}>
              Earlier ones ({wanted().length - shown()})
            </button>
          </Show>
        </Show>
      </div>
      <FieldFoot />
      <Show when={isNoting()}>
        <NotePanel which="more" onClose={() => setNoting(false)} />
      </Show>
    </>
  );
}
