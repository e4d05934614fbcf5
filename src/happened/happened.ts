// What was seen and done on the days before this morning, as the worksheet's notes hand it to the season.

/** What the season takes in of what can be noted. */
const WORDS = [
  "dipped",
  "gave",
  "soaked",
  "filled",
  "took",
  "rain",
  "held",
  "planted",
  "pulled",
  "charged",
  "swapped",
  "broke",
  "mended",
] as const;

export type HappenedWord = (typeof WORDS)[number];

const KNOWN: ReadonlySet<unknown> = new Set(WORDS);

/** Whether the season takes such a word in. */
export const isHappenedWord = (word: unknown): word is HappenedWord => KNOWN.has(word);

/** Farthest back that what happened tells of today [day]: our definition. */
export const TELLS_FOR = 60;
/** What was planted stands for longer, and what broke stays so until it is mended. */
const STANDS_FOR = 365;

const STANDING: ReadonlySet<HappenedWord> = new Set(["planted", "pulled", "broke", "mended"]);

/** How far back such a word tells of today [day]. */
export const tellsFor = (what: HappenedWord): number => (STANDING.has(what) ? STANDS_FOR : TELLS_FOR);

export type Happened = {
  /** [days since 1970-01-01], and the minute of that day, where it is known. */
  readonly date: number;
  readonly minute: number | null;
  /** Where nobody knows the minute: whether it was before or after the day's watering. */
  readonly side: "before" | "after" | null;
  readonly what: HappenedWord;
  /** Id of the part; of rain any. */
  readonly where: string;
  /** Depth [m], volume [m3] or share [-]; null: not said. */
  readonly amount: number | null;
  /** By which delivery or carrying. */
  readonly by: string | null;
  /** Its grower was asked, and read it so. */
  readonly asRead?: true;
};
