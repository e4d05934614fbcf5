// What a card kind warns of: when, beside which row, and how grave it is. Its text stands with the kind's words.

export type Caution = {
  readonly id: string;
  /** Formula text over the card's rows, true when the caution applies; left out: always. */
  readonly if?: string;
  /** Applies only where this row is `none`, or is this word or text; with `if`, both must hold. */
  readonly where?:
    | { readonly row: string; readonly state: "none" }
    | { readonly row: string; readonly word: string };
  /** Where its kind has no words of its own for it; `{row}` stands for that row's value with its unit. */
  readonly text?: string;
  readonly source?: string;
  /** Row beside which it stands. */
  readonly beside: string;
  /** `harm` can hurt someone; `trouble` will not work as drawn; `note` is worth knowing. */
  readonly weight: "harm" | "trouble" | "note";
  /** It can kill: it stands open beside its number until it has been read once on a device. */
  readonly kills?: true;
};
