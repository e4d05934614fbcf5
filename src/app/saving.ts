// What is told of the saving of one open worksheet, and where a save goes on.

import { createSignal } from "solid-js";
import { apart } from "../document/title-apart.ts";
import { makeSaver } from "../storage/saver.ts";
import type { Saved } from "../storage/shelf.ts";
import type { Laid, PageShared } from "./page-shared.ts";

/** What was kept is what opens next, here after a reload and in a new tab, and what other tabs go on from. */
function spread(shared: PageShared, { id, revision }: Saved): void {
  void shared.shelf.setCurrent(id);
  shared.shows(id);
  shared.otherTabs.tell({ id, revision });
}

/**
 * @param onCopy another tab kept its own: the work goes on beside it, under the title that the shelf gave it
 */
export function createSaving(laid: Laid, shared: PageShared, onCopy: (title: string) => void) {
  const [saved, setSaved] = createSignal("");
  const [refused, setRefused] = createSignal(false);
  const [notice, setNotice] = createSignal(
    laid.notice || (laid.readOnly ? "Made by a newer version: it can be read here, not changed." : ""),
  );
  const saver = makeSaver({
    shelf: shared.shelf,
    journal: shared.journal,
    id: laid.id,
    revision: laid.revision,
    now: () => Date.now(),
    onSaved: (outcome) => {
      if (outcome.ok && refused()) setNotice("");
      setRefused(!outcome.ok);
      setSaved(outcome.ok ? "Saved" : "Not saved");
      if (!outcome.ok) {
        setNotice(outcome.failure.text);
        return;
      }
      spread(shared, outcome.value);
      const { conflict } = outcome.value;
      if (!conflict) return;
      setNotice(
        `Another tab changed this worksheet too. Both are kept: this one goes on as "${apart(conflict.title)}".`,
      );
      onCopy(conflict.title);
    },
  });
  shared.setFlush(saver.flush);
  shared.shows(laid.id);
  return { saver, saved, setSaved, refused, notice, setNotice };
}
