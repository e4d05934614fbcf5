// A worksheet out of its JSON text, as tests keep it.

import { parseJson, readWorksheet, type WorksheetReading } from "../../src/document/check.ts";

/** As readWorksheet; a slip in the JSON is told with its line and column. */
export function readWorksheetText(text: string): WorksheetReading {
  const parsed = parseJson(text);
  return parsed.ok ? readWorksheet(parsed.data) : { ok: false, problems: [parsed.problem] };
}
