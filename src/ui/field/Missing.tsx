// Where a page of the season has nothing to tell: what is missing, and the way to where it is said.

import { Show } from "solid-js";
import { isBare, type Kind } from "../../kinds/kind.ts";
import { useSheet } from "../sheet.ts";
import type { FieldPageProps } from "./pages.ts";

export type Lack = { readonly said: string; readonly act: string; readonly go: () => void };

/** What is missing on the sheet before anything can be dipped or watered; null: nothing. */
export function useLack(props: FieldPageProps): () => Lack | null {
  const sheet = useSheet();
  const has = (is: (kind: Kind) => boolean): boolean =>
    sheet.worksheet().cards.some((card) => {
      const kind = sheet.kinds[card.kind];
      return kind !== undefined && is(kind);
    });
  const adding = (said: string, is: (kind: Kind) => boolean): Lack | null => {
    const kind = Object.values(sheet.kinds).find(is);
    if (!kind || has(is)) return null;
    const go = (): void => {
      props.leave();
      sheet.edit.addCard(kind);
    };
    return { said, act: `Add a ${kind.label.toLowerCase()}`, go };
  };
  return () => {
    if (isBare(sheet.kinds, sheet.worksheet().cards))
      return {
        said: "Nothing stands on the sheet yet: no roof, no tank, no bed.",
        act: "Say what there is",
        go: () => {
          props.leave();
          sheet.looking.begin({ step: "count", wish: null, here: true });
        },
      };
    return (
      adding("No tank stands on the sheet: there is nothing to dip.", ({ vessel }) => vessel !== undefined) ??
      adding("No bed stands on the sheet: there is nothing to water.", ({ watered }) => watered !== undefined)
    );
  };
}

/** What is missing, and a button that leads there; of a whole sheet where to note what is not known yet. */
export function Missing(props: FieldPageProps & { readonly undone?: string }) {
  const lack = useLack(props);
  const shown = (): Lack | null =>
    lack() ?? (props.undone ? { said: props.undone, act: "At the bed", go: () => props.go("bed") } : null);
  return (
    <Show when={shown()}>
      {(held) => (
        <div class="field-missing">
          <p>{held().said}</p>
          <button type="button" onClick={() => held().go()}>
            {held().act}
          </button>
        </div>
      )}
    </Show>
  );
}
