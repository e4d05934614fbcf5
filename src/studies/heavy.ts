// Runs a heavy model by its name: the same function in the page's worker, on the command line and in tests.

import { inputOf } from "../graph/requests.ts";
import type { CardKinds, Outputs, Request } from "../graph/types.ts";
import type { DailyRecord } from "../rainfall/record.ts";

/** Answers a request of the graph. */
export function runHeavy(kinds: CardKinds, request: Request, record: DailyRecord | null): Outputs {
  const name = request.model.slice(request.model.indexOf(".") + 1);
  const model = kinds[request.cardKind]?.models.find((candidate) => candidate.name === name);
  if (!model) throw new Error(`No model ${request.model} is known.`);
  return model.run(inputOf(request, model, record));
}
