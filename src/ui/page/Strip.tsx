// The groups of parts in one line, each with how many there are and whether any is in trouble: at the foot of a phone, at
// the head of the open part where the page has two columns.

import { Index, Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import type { Parts, PartsOfGroup } from "./parts.ts";
import { createRoving } from "./roving.ts";

/** What stands in the place of the part: the list of all parts, from one of their groups on. */
export type Listing = {
  readonly group: () => string | null;
  readonly show: (group: string | null) => void;
};

/** Those lines of one's own that nobody has take no room. */
const isShown = ({ short, cards }: PartsOfGroup): boolean => short !== "Own" || cards.length > 0;

export function Strip(props: { readonly parts: Parts; readonly listing: Listing }) {
  const sheet = useSheet();
  const groups = () => props.parts.groups().filter(isShown);
  const roving = createRoving(() => groups().map(({ short }) => short));
  const troubled = (group: PartsOfGroup) =>
    group.cards.filter(({ id }) => props.parts.troubleOf(id) !== null).map(({ id }) => id);
  const isOpen = (group: PartsOfGroup): boolean =>
    props.listing.group() !== null
      ? props.listing.group() === group.title
      : group.cards.some(({ id }) => id === sheet.looking.part());
  const press = (group: PartsOfGroup): void => {
    const first = troubled(group)[0] ?? group.cards[0]?.id;
    if (sheet.looking.width() === "phone" && isOpen(group)) {
      props.listing.show(null);
      sheet.looking.openPart(null);
    } else if (first === undefined || isOpen(group)) props.listing.show(group.title);
    else {
      props.listing.show(null);
      sheet.edit.goTo(first);
    }
  };
  const said = (group: PartsOfGroup): string => {
    const count = troubled(group).length;
    return count === 0 ? "" : `, ${count} to look at`;
  };
  return (
    <nav class="zone-strip" id="parts" aria-label="Parts" tabindex="-1">
      {/* biome-ignore lint/a11y/useSemanticElements: a list of groups that the arrow keys go along */}
      <div role="group" aria-label="Groups" onKeyDown={roving.onKeyDown} onFocusIn={roving.onFocusIn}>
        <Index each={groups()}>
          {(group) => (
            <button
              type="button"
              aria-pressed={isOpen(group())}
              title={group().title}
              data-stop={group().short}
              tabindex={roving.tabindex(group().short)}
              onClick={() => press(group())}
            >
              <span class="name">{group().short}</span>{" "}
              <span class="counts">
                <span class="count">{group().cards.length}</span>
                <Show when={troubled(group()).length > 0}>
                  {" "}
                  <b class="disc" aria-hidden="true">
                    {troubled(group()).length}
                  </b>
                </Show>
                <span class="unseen">{said(group())}</span>
              </span>
            </button>
          )}
        </Index>
      </div>
    </nav>
  );
}
