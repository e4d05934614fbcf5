// Worksheets gone wrong on purpose: good ones with a few of their values, links, ids and texts replaced. From one seed.

import { readdirSync, readFileSync } from "node:fs";
import { seededRandom } from "../src/rainfall/seeded-random.ts";

const FOLDER = new URL("../templates/", import.meta.url);

/** Sets this on the page if it is ever run. */
export const CANARY = "eavesdropped";

const MARKUP = [
  `<img src=x onerror="${CANARY}=1">`,
  `<script>${CANARY}=1</script>`,
  `"><svg onload=${CANARY}=1>`,
  `javascript:${CANARY}=1`,
  `\${${CANARY}=1}`,
  `{{constructor.constructor('${CANARY}=1')()}}`,
  `=HYPERLINK("javascript:${CANARY}=1")`,
  `constructor.constructor("${CANARY}=1")()`,
];

const VALUES: readonly unknown[] = [
  ...MARKUP,
  0,
  -1,
  1e308,
  -1e308,
  5e-324,
  1e-9,
  0.1 + 0.2,
  1e15,
  2 ** 53,
  null,
  "",
  "constructor",
  "__proto__",
  "toString",
  "02-30",
  "99-99",
  "2026-02-30",
  "\u0000",
  "\u202Eevil",
  "😀".repeat(50),
  [],
  [null],
  ["totes", "totes", "nobody"],
  [
    [0, 0],
    [1, 1e9],
    [2, -1e9],
  ],
  Array(12).fill(-5),
  Array(12).fill(1e9),
  Array(400).fill(0),
  [{ crop: "__proto__", planted: "05-01", share: 1 }],
  [{ crop: "tomato", planted: "13-45", share: -3 }],
  [{ crop: "tomato", planted: "05-01", share: 1e300 }],
  true,
  {},
  { value: 3 },
];

const UNITS = [
  "",
  "gal",
  "ft",
  "m",
  "degC",
  "%",
  "day",
  "parsec",
  "__proto__",
  "ft2",
  "in, ft",
  "$",
  "Ah",
  MARKUP[0],
];

type Json = Record<string, unknown>;
type Sheet = Json & { cards: (Json & { id: string; kind: string; givens: Record<string, Json> })[] };

const FORMULAS = [
  "1/0",
  "own + own",
  "season.met / 0",
  "totes.capacity + wand.flow",
  "(".repeat(900),
  "9^9^9^9",
  "max(".repeat(60),
  ...MARKUP,
];

function templates(): readonly string[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .map((name) => readFileSync(new URL(name, FOLDER), "utf8"));
}

/** Makes hostile worksheets, one a call; the same seed makes the same ones. */
export function hostileWorksheets(seed: number): () => unknown {
  const good = templates();
  const chance = seededRandom(seed);
  const below = (limit: number) => Math.floor(chance() * limit);
  const pick = <T>(list: readonly T[]): T => list[below(list.length)] as T;
  const harm: readonly ((sheet: Sheet) => void)[] = [
    (sheet) => {
      const { givens } = pick(sheet.cards);
      const name = pick([...Object.keys(givens), "anything"]);
      givens[name] = { ...givens[name], value: pick(VALUES) };
    },
    (sheet) => {
      const { givens } = pick(sheet.cards);
      for (const name of Object.keys(givens))
        if (chance() < 0.3) givens[name] = { ...givens[name], unit: pick(UNITS) };
    },
    (sheet) => {
      const { givens } = pick(sheet.cards);
      const ids = sheet.cards.map((card) => card.id);
      for (const name of ["from", "to", "drains_to", "overflows_to", "powered_by", "on"])
        if (name in givens || chance() < 0.2) givens[name] = { value: pick([...ids, "gone"]), unit: "" };
    },
    (sheet) => {
      pick(sheet.cards).id = pick([
        ...sheet.cards.map((card) => card.id),
        "Bad Id",
        "constructor",
        "measured",
      ]);
    },
    (sheet) => {
      pick(sheet.cards).kind = pick(["roof", "tank", "line", "bed", "own", "tee", "ghost", "__proto__"]);
    },
    (sheet) => {
      const name = pick(["title", "datum", "made_by", "made_on", "currency", "units", "locale", "version"]);
      sheet[name] = pick(VALUES);
      pick(sheet.cards)["title"] = pick(MARKUP);
    },
    (sheet) => {
      const givens = {
        formula: { value: pick(FORMULAS), unit: "" },
        name: { value: pick(MARKUP), unit: "" },
      };
      sheet.cards.push({ id: `own_${below(9)}`, kind: "own", title: pick(MARKUP), givens, measured: {} });
    },
    (sheet) => {
      const measured = { capacity: { value: pick(VALUES), unit: pick(UNITS) } };
      Object.assign(pick(sheet.cards), { measured, options: { a: pick(VALUES) }, active: "a" });
    },
    (sheet) => {
      sheet.cards.splice(below(sheet.cards.length), 1);
    },
    (sheet) => {
      if (sheet.cards.length > 40) return;
      sheet.cards = [...sheet.cards, ...sheet.cards.map((card) => ({ ...card, id: `${card.id}_b` }))];
    },
  ];
  return () => {
    const sheet = JSON.parse(pick(good)) as Sheet;
    for (let times = 1 + below(5); times > 0 && sheet.cards.length > 0; times--) pick(harm)(sheet);
    return sheet;
  };
}

/** A worksheet's text, now and then cut or with a piece put in where none belongs. */
export function hostileTexts(seed: number): () => string {
  const next = hostileWorksheets(seed);
  const chance = seededRandom(seed + 1);
  return () => {
    const text = JSON.stringify(next());
    const at = Math.floor(chance() * text.length);
    const kind = chance();
    if (kind < 0.12) return text.slice(0, at);
    if (kind < 0.24)
      return `${text.slice(0, at)}${MARKUP[Math.floor(chance() * MARKUP.length)]}${text.slice(at)}`;
    return text;
  };
}
