// Where a worksheet came from, and where one that is handed on can be opened.

/** "Sent to you, made by a neighbour on Jul 2. Yours is kept aside." */
export function receivedSaid({
  by,
  on,
  hasOwn,
}: {
  readonly by: string;
  readonly on: string;
  readonly hasOwn: boolean;
}): string {
  const made = `Sent to you, made by ${by || "somebody who gave no name"}${on === "" ? "" : ` on ${on}`}.`;
  return hasOwn ? `${made} Yours is kept aside.` : made;
}

/** From where a link opens, said where that is not everywhere. */
export const LINK_OPENS = {
  anywhere: "",
  house: "This link opens only in this house, while the computer that serves the page runs.",
  computer: "This link opens only on this computer.",
  file: "A link to this page opens only on this computer, where the file lies.",
} as const;

/** What goes where such a link does not. */
export const INSTEAD_OF_LINK = "For somebody elsewhere, save the page in one file and send that.";
