// What is fetched when somebody first asks for it, and made once for the worksheet that is open.

import { getOwner, runWithOwner } from "solid-js";

/**
 * @param fetchMaker fetches what makes it; where that fails it is asked for again the next time
 * @returns made under the owner that stands now, so that it ends with the worksheet
 */
export function later<Made>(fetchMaker: () => Promise<() => Made>): () => Promise<Made> {
  const owner = getOwner();
  let made: Promise<Made> | null = null;
  const make = async (): Promise<Made> => {
    const maker = await fetchMaker();
    const fresh = runWithOwner(owner, maker);
    if (!fresh) throw new Error("The worksheet was closed.");
    return fresh;
  };
  return () => {
    made ??= make().catch((error: unknown) => {
      made = null;
      throw error;
    });
    return made;
  };
}
