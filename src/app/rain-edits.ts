// What the components may do with the rain that the sheet runs on.

import { setGiven } from "../document/edits.ts";
import { recordNames } from "../document/record-names.ts";
import type { Edits } from "../ui/sheet.ts";
import type { createRain } from "./rain.ts";
import type { Session } from "./session.ts";

/** What edits of rain are made with. */
type RainTools = {
  readonly session: Session;
  readonly rain: ReturnType<typeof createRain>;
  readonly setRecord: (key: string, label: string) => void;
};

type RainEdit =
  | "importRain"
  | "pasteRain"
  | "answerRain"
  | "fillRain"
  | "fillWarmth"
  | "joinRain"
  | "takeRain"
  | "cancelRain"
  | "reopenRain"
  | "dropRain"
  | "makeUpFromRain";

export function rainEdits({ session, rain, setRecord }: RainTools): Pick<Edits, RainEdit> {
  const recordInUse = () => session.engine.records.get(recordNames(session.worksheet())[0] ?? "");
  return {
    importRain: rain.take,
    pasteRain: rain.paste,
    answerRain: rain.choose,
    fillRain: rain.fill,
    fillWarmth: rain.warm,
    joinRain: rain.join,
    takeRain: rain.keep,
    cancelRain: rain.forget,
    reopenRain: () => {
      const record = recordInUse();
      if (record) rain.again(record);
    },
    dropRain: () => {
      rain.forget();
      setRecord("", "Back to made-up weather");
    },
    makeUpFromRain: async () => {
      const record = recordInUse();
      if (!record) return;
      const { normalsOf } = await import("./normals-of.ts");
      rain.forget();
      session.edit("Weather made up from the record", (worksheet) =>
        Object.entries(normalsOf(record, worksheet.units)).reduce(
          (sheet, [name, entry]) => setGiven(sheet, "weather", name, entry),
          setGiven(worksheet, "weather", "record", null),
        ),
      );
    },
  };
}
