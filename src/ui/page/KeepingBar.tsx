// What must be told above the answers: a refused save, what came from somebody else, a version that waits.

import { lazy, Show } from "solid-js";
import { FIRST_VISIT } from "../../telling/first-visit.ts";
import { beginAnew } from "../begin/beginning.ts";
import { useSheet } from "../sheet.ts";

const FromElsewhere = lazy(async () => ({ default: (await import("./FromElsewhere.tsx")).FromElsewhere }));

function FirstVisit() {
  const sheet = useSheet();
  /** The first number of the first part that holds water. */
  const turned = (): string | null => {
    const card = sheet.worksheet().cards.find(({ kind }) => sheet.kinds[kind]?.uses?.includes("holds_water"));
    const row = card && sheet.kinds[card.kind]?.rows.find((one) => one.row === "given" && !one.hidden);
    return card && row ? `${card.id}.${row.name}` : null;
  };
  const turn = (id: string): void => {
    sheet.looking.take(id);
    sheet.edit.goTo(id);
  };
  return (
    <Show when={sheet.keep.firstVisit()}>
      <p class="told first-visit">
        {FIRST_VISIT}{" "}
        <button type="button" class="act" onClick={() => beginAnew(sheet)}>
          Start my own
        </button>{" "}
        <Show when={turned()}>
          {(id) => (
            <button type="button" class="act" onClick={() => turn(id())}>
              Turn its numbers
            </button>
          )}
        </Show>
      </p>
    </Show>
  );
}

export function KeepingBar() {
  const sheet = useSheet();
  return (
    <aside class="width keeping" aria-label="To know">
      <Show when={sheet.keep.waiting()}>
        <p class="told" role="status">
          A newer version lies ready.{" "}
          <button type="button" class="button" onClick={() => sheet.keep.update()}>
            Open it now
          </button>
        </p>
      </Show>
      <Show when={sheet.keep.notice()}>
        {(text) => (
          <p class="told" role="alert">
            {text()}{" "}
            <Show when={sheet.keep.refused()}>
              <button type="button" class="button" onClick={() => sheet.edit.saveFile()}>
                Save as a file
              </button>
            </Show>{" "}
            <button type="button" class="small" onClick={() => sheet.keep.dismiss()}>
              All right
            </button>
          </p>
        )}
      </Show>
      <FirstVisit />
      <Show when={sheet.keep.received() !== null || sheet.keep.borrowed().length > 0}>
        <FromElsewhere />
      </Show>
    </aside>
  );
}
