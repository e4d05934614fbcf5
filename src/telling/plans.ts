// What is said of a plan beside the sheet.

const WHY = {
  gone: "is gone from the sheet, so what this plan changes of it is left out",
  another_kind: "is left out: the sheet has another kind of part under its name",
  no_room: "is left out: the sheet is full",
} as const;

/** What of a plan does not count, and why. */
export const leftOutSaid = ({
  title,
  why,
}: {
  readonly title: string;
  readonly why: keyof typeof WHY;
}): string => `${title} ${WHY[why]}.`;
