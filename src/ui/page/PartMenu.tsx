// What can be done with a whole part: renaming (on a phone), copying, moving, taking it out.

import { Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { DipStrip } from "../dialogs/DipStrip.tsx";
import { useSheet } from "../sheet.ts";

/** On a phone the name stands at the foot of the part, and the menu leads to it. */
function toName(card: string): void {
  const field = document.getElementById(card)?.querySelector<HTMLInputElement>(".named .name");
  field?.focus();
  field?.select();
}

export function PartMenu(props: { readonly card: Card }) {
  const sheet = useSheet();
  let menu: HTMLDetailsElement | undefined;
  const act = (doing: () => void) => () => {
    // What is pressed goes with the menu; the focus stays where the menu is opened.
    menu?.querySelector("summary")?.focus({ preventScroll: true });
    if (menu) menu.open = false;
    doing();
  };
  return (
    <details class="more-menu" ref={menu}>
      <summary aria-label={`More for ${props.card.title}`}>···</summary>
      <div>
        <Show when={sheet.looking.width() === "phone"}>
          <button type="button" onClick={act(() => toName(props.card.id))}>
            Rename
          </button>
        </Show>
        <Show when={!sheet.kinds[props.card.kind]?.single}>
          <button type="button" onClick={act(() => sheet.edit.copyCard(props.card))}>
            Make a copy
          </button>
          <button type="button" onClick={act(() => sheet.edit.moveCard(props.card, -1))}>
            Move up
          </button>
          <button type="button" onClick={act(() => sheet.edit.moveCard(props.card, 1))}>
            Move down
          </button>
          <Show when={sheet.kinds[props.card.kind]?.vessel}>
            {(vessel) => <DipStrip card={props.card} row={vessel()} onOpen={act(() => {})} />}
          </Show>
          <button type="button" data-tone="trouble" onClick={act(() => sheet.edit.removeCard(props.card))}>
            Take it out
          </button>
        </Show>
      </div>
    </details>
  );
}
