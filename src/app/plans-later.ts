// Plans beside the sheet are loaded when somebody first asks for them.

import { getOwner, runWithOwner } from "solid-js";
import type { Plans } from "../ui/beside/plans.ts";
import type { AskingPool } from "../worker/asking-pool.ts";
import type { InHandTools } from "./turned.ts";

/** The plans of one open worksheet, made once; where they could not be fetched they are asked for again the next time. */
export function plansLater(tools: InHandTools, pool: AskingPool): () => Promise<Plans> {
  const owner = getOwner();
  let made: Promise<Plans> | null = null;
  const make = async (): Promise<Plans> => {
    const { createPlans } = await import("./plans.ts");
    const plans = runWithOwner(owner, () => createPlans(tools, pool.asker()));
    if (!plans) throw new Error("The worksheet was closed.");
    return plans;
  };
  return () => {
    made ??= make().catch((error: unknown) => {
      made = null;
      throw error;
    });
    return made;
  };
}
