// The network as models of any room read it.

import type { ModelInput } from "../graph/types.ts";
import { type Network, networkHeld } from "../network/network.ts";

/** The network among what a model of the season's card takes as `network`. */
export const networkIn = ({ values }: ModelInput): Network => networkHeld(values["network"]);
