// Dips of more than their tank holds: asked about wherever they stand, as they count only once that is answered.

import { createMemo, For } from "solid-js";
import { type UncountedDip, uncountedDips } from "../../document/note-question.ts";
import { tellingOf } from "../../document/telling-notes.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";
import { Question, useAsking, useNoting } from "./noting-here.tsx";
import { useTold } from "./told.ts";

/** Dips that would tell of today and are not counted. */
function useUncounted(): () => readonly UncountedDip[] {
  const sheet = useSheet();
  const asking = useAsking();
  return createMemo(() => {
    const today = parseIsoDate(sheet.today()) ?? 0;
    return uncountedDips(asking(), tellingOf(sheet.worksheet().notes ?? [], today));
  });
}

export function Uncounted() {
  const titleOf = useTitleOf();
  const told = useTold();
  const noting = useNoting();
  const uncounted = useUncounted();
  const said = ({ note, asked }: UncountedDip) => ({
    question: `Dipped ${told.when(note)}, not counted yet. ${asked.question}`,
    choices: asked.choices.map(({ label, note: chosen }) => {
      const { where, id } = note;
      const words = `${titleOf(where)}: ${label}`;
      const take = () =>
        chosen
          ? noting.note({ said: chosen, words, sure: true }, id)
          : noting.note({ said: { what: "undid", where, undoes: id }, words });
      return { label, take };
    }),
  });
  return (
    <For each={uncounted()}>
      {(one) => (
        <div class="uncounted">
          <Question asked={said(one)} onLeave={() => {}} />
        </div>
      )}
    </For>
  );
}
