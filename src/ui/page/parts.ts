// The parts of the place as the page leads to them: by groups, in a row as the water goes, and those in trouble.

import { type Accessor, createMemo } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { type Group, groupsOf } from "../../kinds/kind.ts";
import { type Neighbours, neighboursOf, partsInRow } from "../../telling/neighbours.ts";
import type { Sheet } from "../sheet.ts";

export type PartsOfGroup = Group & { readonly cards: readonly Card[] };

export type Parts = {
  readonly groups: Accessor<readonly PartsOfGroup[]>;
  /** Cards of a kind that this version does not know. */
  readonly unknown: Accessor<readonly Card[]>;
  /** Ids of all, each behind those that stand before it. */
  readonly inRow: Accessor<readonly string[]>;
  /** The number of its trouble as the drawing has it; null where nothing is wrong in it. */
  readonly troubleOf: (card: string) => number | null;
  readonly neighbours: (card: string) => Neighbours;
  readonly titleOf: (card: string) => string;
  /** The part so many places along the row, round at its ends. */
  readonly along: (by: number) => string | null;
};

const sameList = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((id, at) => id === other[at]);

export function createParts(sheet: Sheet): Parts {
  const cards = () => sheet.worksheet().cards;
  const groups = createMemo(() =>
    groupsOf(sheet.kinds).map((group) => ({
      ...group,
      cards: group.kinds.flatMap(({ kind }) => cards().filter((card) => card.kind === kind)),
    })),
  );
  const unknown = createMemo(() => cards().filter((card) => !sheet.kinds[card.kind]));
  const asked = { result: sheet.result, cards: [] };
  const inRow = createMemo(
    () =>
      partsInRow(
        asked,
        [...groups().flatMap((group) => group.cards), ...unknown()].map(({ id }) => id),
      ),
    [],
    { equals: sameList },
  );
  const troubles = createMemo(() => new Map(sheet.troubles().map(({ card, number }) => [card, number])));
  return {
    groups,
    unknown,
    inRow,
    troubleOf: (card) => troubles().get(card) ?? null,
    neighbours: (card) => neighboursOf(asked, card),
    titleOf: (id) => cards().find((card) => card.id === id)?.title ?? id,
    along: (by) => {
      const row = inRow();
      const at = row.indexOf(sheet.looking.part() ?? "");
      return row[(at + by + row.length) % row.length] ?? null;
    },
  };
}
