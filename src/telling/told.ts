// What stands over the answers: the first words to somebody new, and where a worksheet came from.

export const FIRST_VISIT = "How long does roof rain carry the beds? This is a made-up place.";

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
