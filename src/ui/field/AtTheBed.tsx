// At the bed: tanks and the gauge read with a finger, beds watered with one touch, and how long it lasts now.

import { Show } from "solid-js";
import type { Kind } from "../../kinds/kind.ts";
import { lastsInShort, leftOutSaid, undippedSaid } from "../../telling/from-today.ts";
import { useSheet } from "../sheet.ts";
import { useTitleOf } from "../titles.ts";
import { Beds } from "./Beds.tsx";
import { Missing } from "./Missing.tsx";
import { MoreNotes } from "./MoreNotes.tsx";
import { FieldFoot, useNoting } from "./noting-here.tsx";
import { useOutOfSeason } from "./out-of-season.ts";
import type { FieldPageProps } from "./pages.ts";
import { Tanks } from "./Tanks.tsx";
import { Uncounted } from "./Uncounted.tsx";

/** How long it lasts, and how long it did before the last note. */
function Lasts(props: { readonly hasTanks: boolean }) {
  const sheet = useSheet();
  const { lasts, before, lasting } = useNoting();
  const titleOf = useTitleOf();
  const working = () => sheet.working() || lasting()?.working() === true;
  const said = () => {
    const held = lasts();
    return held && lastsInShort(held, titleOf);
  };
  const restsOn = () => {
    const held = lasts();
    return held ? [undippedSaid(held, titleOf), leftOutSaid(held)] : [];
  };
  const outside = useOutOfSeason();
  const none = () => {
    if (!props.hasTanks) return "";
    return (
      outside() ||
      lasting()?.failure() ||
      (working() ? "Working it out …" : "Dip a tank to see how long the water lasts.")
    );
  };
  const was = () => {
    const [old, now] = [before(), said()];
    const day = old ? lastsInShort(old, titleOf).day : "";
    return day !== "" && day !== now?.day ? day : "";
  };
  return (
    <div class="field-lasts" aria-live="polite" classList={{ working: working() }}>
      <Show when={said()} fallback={<p>{none()}</p>}>
        {(held) => (
          <>
            <p class="lead">
              {held().said} <b>{held().day}</b>
              <Show when={was()}>{(day) => <small> was {day()}</small>}</Show>
            </p>
            <p class="more">{[held().more, ...restsOn()].filter((words) => words !== "").join(" ")}</p>
          </>
        )}
      </Show>
    </div>
  );
}

export function AtTheBed(props: FieldPageProps) {
  const sheet = useSheet();
  const cards = (has: (kind: Kind) => boolean) =>
    sheet.worksheet().cards.filter((card) => {
      const kind = sheet.kinds[card.kind];
      return kind !== undefined && has(kind);
    });
  const tanks = () => cards(({ vessel }) => vessel !== undefined);
  const beds = () => cards(({ watered }) => watered !== undefined);
  return (
    <>
      <div class="field-body at-the-bed" classList={{ many: beds().length > 2 }}>
        <Lasts hasTanks={tanks().length > 0} />
        <Tanks cards={tanks()} />
        <Uncounted />
        <Missing {...props} />
        <Show when={beds().length > 0}>
          <Beds cards={beds()} />
        </Show>
        <MoreNotes {...props} />
        <p class="further">
          <button type="button" onClick={() => props.go("pour")}>
            What to water
          </button>
          <button type="button" onClick={() => props.go("notes")}>
            Notes
          </button>
          <button type="button" onClick={() => props.go("year")}>
            The year
          </button>
        </p>
      </div>
      <FieldFoot />
    </>
  );
}
