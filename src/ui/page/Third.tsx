// The third column of a wide window: what moved since the answers were held, and how the number in hand, or the one that was pressed, was worked out.

import { Show } from "solid-js";
import { Moved } from "../hand/Moved.tsx";
import { Working } from "../rows/Working.tsx";
import { useSheet } from "../sheet.ts";

export function Third() {
  const sheet = useSheet();
  const id = () => {
    const row = sheet.looking.openedAt() === "row" ? sheet.opened() : null;
    return row ?? sheet.looking.inHand();
  };
  const place = () => {
    const [cardId, name] = id()?.split(".") ?? [];
    const card = sheet.worksheet().cards.find((one) => one.id === cardId);
    const row = sheet.kinds[card?.kind ?? ""]?.rows.find((one) => one.name === name);
    return card && row ? { quantity: `${card.id}.${row.name}`, card, row } : null;
  };
  return (
    <aside class="zone-third" aria-label="How it is worked out">
      <Show when={sheet.held()}>
        <Moved />
      </Show>
      <Show when={!sheet.held() && !place()}>
        <p class="aside">Press a number: how it was worked out stands here.</p>
      </Show>
      <Show when={place()}>
        {(at) => (
          <>
            <h2>{sheet.place(at().quantity)}</h2>
            <Working quantity={at().quantity} card={at().card} row={at().row} />
          </>
        )}
      </Show>
    </aside>
  );
}
