// Where an import of rain stands, as the components see it: words, options and a strip of years; no records.

export type RainQuestion = {
  readonly id: string;
  readonly text: string;
  /** Empty where the answer is typed. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly likely: string | null;
};

/** Something taken for granted; another option of it can be chosen. */
export type RainAssumption = {
  readonly id: string;
  readonly text: string;
  readonly value: string;
  /** Empty where it is typed. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
};

export type MonthState = "whole" | "part" | "none" | "outside";

/** A year of the strip: the state of each of its months, its missing days, its rain as shown. */
export type StripYear = {
  readonly year: number;
  readonly months: readonly MonthState[];
  readonly missing: number;
  readonly rain: string;
};

/** Something that the file leaves open: each answer stands beside the yearly rain that it would give. */
export type RainOpen = {
  readonly id: string;
  readonly text: string;
  /** The answer in force: said, or the likeliest. Empty where nothing is likely and nothing said. */
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string; readonly yearly: string }[];
};

/** What betrays a mistake, beside the button that takes the file. */
export type RainTold = {
  readonly yearly: string;
  readonly lead: string;
  readonly wet: string;
  /** Why a usual year is not as it says, each in a sentence: what is taken all the same is taken knowingly. */
  readonly doubts: readonly string[];
  /** What a record of few years cannot tell, and its drier versions; empty for a long one. */
  readonly few: string;
  readonly drier: readonly { readonly name: string; readonly yearly: string }[];
};

/** A record of few years as it is and with less rain: how its worst season would go, as shown. */
export type DrierYears = readonly {
  readonly name: string;
  readonly rain: string;
  readonly daysShort: string;
  readonly shareMet: string;
}[];

export type RainPreview = {
  readonly title: string;
  /** Why the last answer was not taken, or empty. */
  readonly wrong: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Which of the columns are taken. */
  readonly taken: readonly boolean[];
  readonly open: readonly RainOpen[];
  readonly told: RainTold | null;
  readonly facts: readonly string[];
  readonly assumptions: readonly RainAssumption[];
  readonly years: readonly StripYear[];
  /** Runs of missing days as the record now stands, in words, the longest first. */
  readonly gaps: readonly string[];
  readonly filling: RainAssumption | null;
  /** The same for the warmth of days, which drying is worked out from. */
  readonly warming: RainAssumption | null;
  readonly joining: RainAssumption | null;
};

export type RainImport =
  | { readonly state: "idle" }
  | { readonly state: "reading"; readonly share: number; readonly name: string }
  | {
      readonly state: "asking";
      readonly questions: readonly RainQuestion[];
      readonly preview: RainPreview;
    }
  | { readonly state: "shown"; readonly preview: RainPreview }
  | { readonly state: "taken"; readonly title: string; readonly facts: readonly string[] }
  | { readonly state: "refused"; readonly reason: string };

/** What the page can do with rain. */
export type RainEdits = {
  readonly importRain: (file: File) => void;
  /** Readings of a gauge, or a whole table, as text. */
  readonly pasteRain: (text: string) => void;
  readonly answerRain: (question: string, value: string) => void;
  readonly fillRain: (how: string) => void;
  readonly fillWarmth: (how: string) => void;
  readonly joinRain: (how: string) => void;
  readonly takeRain: () => void;
  /** Lays the record in use open again, to fill its gaps or to join it with another. */
  readonly reopenRain: () => void;
  readonly cancelRain: () => void;
  readonly dropRain: () => void;
  /** Fits the twelve normals to the record in use and makes up weather from them instead. */
  readonly makeUpFromRain: () => void;
};
