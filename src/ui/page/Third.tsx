// The third column of a wide window: what moved since the answers were held, and how the number in hand, or the one that was pressed, was worked out.

import { Show } from "solid-js";
import { numberIn } from "../../graph/readers.ts";
import { Moved } from "../hand/Moved.tsx";
import { rowAt } from "../row-at.ts";
import { Working } from "../rows/Working.tsx";
import { useSheet } from "../sheet.ts";

export function Third() {
  const sheet = useSheet();
  const restingOn = (): string | null => {
    const answer = sheet.looking.answer();
    return numberIn(sheet.result(answer)) === null ? null : answer;
  };
  const id = () => {
    const row = sheet.looking.openedAt() === "row" ? sheet.opened() : null;
    if (row !== null) return row;
    // At rest, the answer that the curve begins with: the lead's.
    return sheet.looking.inHand() ?? (sheet.held() ? null : restingOn());
  };
  const place = () => rowAt(sheet, id() ?? "");
  const quantity = () => id() ?? "";
  return (
    <aside class="zone-third" aria-label="How it is worked out">
      <Show when={sheet.held()}>
        <Moved />
      </Show>
      <Show when={!sheet.held() && !place()}>
        <p class="aside">Press a number of a part: how it was worked out stands here.</p>
      </Show>
      <Show when={place()}>
        {(at) => (
          <>
            <h2>{sheet.place(quantity())}</h2>
            <Working quantity={quantity()} card={at().card} row={at().row} />
          </>
        )}
      </Show>
    </aside>
  );
}
