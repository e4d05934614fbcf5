// What a card kind is to the network and the season: how it hangs together with others, what the run takes of it,
// and what the run's answer gives back to its rows.
// Each kind says it once, in `season.ts` of its room; `kinds/season` gathers.

import type { CardResults, Missing } from "../graph/readers.ts";
import type { ModelInput, Outputs } from "../graph/types.ts";
import type { EdgeKind, Role } from "../network/network.ts";
import type { SeasonAnswer } from "../season/answer.ts";
import type { SeasonInput } from "../season/input.ts";

/** An end of a tie: the card itself, or the first of these link rows that leads to a card. */
type TieEnd = "itself" | readonly string[];

/** An edge of the network that a card's links make. */
export type Tie = {
  readonly kind: EdgeKind;
  readonly from: TieEnd;
  readonly to: TieEnd;
  /**
   * The row that says why nothing ever passes (a word; none where it runs); of a line also what the water must stand over
   * [m], and the brim of the tank it starts at [m] (none at a joint).
   */
  readonly passes?: {
    readonly blocked: string;
    readonly heights?: { readonly over: string; readonly brim: string };
  };
};

/** Lists of the season's input that cards are put into. */
export type PartField = Exclude<
  {
    [Field in keyof SeasonInput]-?: SeasonInput[Field] extends readonly { readonly id: string }[]
      ? Field
      : never;
  }[keyof SeasonInput],
  "leftOut"
>;

type Part = SeasonInput[PartField][number];

/** How a card becomes a part of the season's input. */
type Taken = {
  readonly field: PartField;
  readonly make: (id: string, results: CardResults, input: ModelInput) => Part | Missing;
};

export type SeasonShare = {
  /** What it is to the network; left out: not a part that water or power stops at. */
  readonly role?: Role;
  readonly ties?: readonly Tie[];
  /** Rows that the season reads of it: those that must be ready for it to take part, and others. */
  readonly must?: readonly string[];
  readonly may?: readonly string[];
  /** Left out: it is no part of its own, others are made with what it says. */
  readonly takes?: Taken;
  /** What the run's answer gives its cards' rows that are "of" `season.run`, by quantity id. */
  readonly gives?: (answer: SeasonAnswer, plan: SeasonInput) => Outputs;
};

/** What a kind takes from its cards: parts of one list of the season's input. */
export const takes = <Field extends PartField>(
  field: Field,
  make: (id: string, results: CardResults, input: ModelInput) => SeasonInput[Field][number] | Missing,
): Taken => ({ field, make });

/** What a kind gives back to its cards: from the answers of one list to the rows of each, by their names. */
export const gives =
  <Field extends PartField & keyof SeasonAnswer>(
    field: Field,
    rowsOf: (part: SeasonAnswer[Field][number], plan: SeasonInput) => Outputs,
  ): NonNullable<SeasonShare["gives"]> =>
  (answer, plan) => {
    const parts: readonly SeasonAnswer[Field][number][] = answer[field];
    return Object.fromEntries(
      parts.flatMap((part) =>
        Object.entries(rowsOf(part, plan)).map(([name, outcome]) => [`${part.id}.${name}`, outcome]),
      ),
    );
  };

/** The link or other word of a card, or null where it has none. */
export const idOrNull = (word: string): string | null => word || null;
