// Finds a named unit by the word a person wrote, and says why where the word is a trap.

import { nearestOf } from "./spelling.ts";
import { type NamedUnit, UNIT_TABLE } from "./table.ts";

export type Lookup = { readonly unit: NamedUnit } | { readonly refused: string };

/** Words that could mean two things, or something else than their writer thinks. */
const TRAPS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    M: "A capital M alone is not a unit. Write m for metres, min for minutes or mi for miles.",
    MM: "MM could be millimetres or millions. Write mm for millimetres.",
    Mm: "Mm would be a million metres. Write mm for millimetres.",
    S: "A capital S is not seconds. Write s for seconds.",
    H: "A capital H is not hours. Write h for hours.",
    T: "A capital T is not tonnes. Write t for tonnes.",
    G: "A capital G is not grams. Write g for grams.",
    k: "A small k is not a unit. Write K for kelvin, kg for kilograms or km for kilometres.",
    a: "A small a could be amps or years. Write A for amps or year for years.",
    c: "A small c could be cups or degrees Celsius. Write cup or degC.",
    F: "F alone is not a unit here. Write degF for degrees Fahrenheit.",
    f: "f alone is not a unit here. Write degF for degrees Fahrenheit or ft for feet.",
    D: "A capital D is not days. Write day.",
    y: "y could be yards or years. Write yd or year.",
    mj: "mj could be a thousandth of a joule or a million joules. Write MJ for megajoules.",
    mw: "mw could be a thousandth of a watt or a million watts. Write mW or MW.",
    mpa: "mpa could be a thousandth of a pascal or a million pascals. Write mPa or MPa.",
    ton: "A ton could be 2,000 lb, 2,240 lb or 1,000 kg. Write short ton, long ton or t.",
    tons: "A ton could be 2,000 lb, 2,240 lb or 1,000 kg. Write short ton, long ton or t.",
    month: "Months differ in length. Write days, weeks or years.",
    months: "Months differ in length. Write days, weeks or years.",
    mo: "Months differ in length. Write days, weeks or years.",
    VA: "VA is not counted here. Write W for watts.",
  }),
);

/** Units whose small m means a thousandth, so that a capital M would be a thousand million times off. */
const THOUSANDTHS = new Set(["m", "mm", "mL", "mA", "mAh", "mV", "mW", "mPa", "mbar", "mg", "mohm", "mmH2O"]);

const EXACT = new Map<string, NamedUnit>();
const LENIENT = new Map<string, Set<NamedUnit>>();
for (const unit of UNIT_TABLE) {
  for (const word of [unit.name, ...unit.aliases]) {
    EXACT.set(word, unit);
    const lower = word.toLowerCase();
    LENIENT.set(lower, (LENIENT.get(lower) ?? new Set()).add(unit));
  }
}

function lenient(word: string): Lookup | null {
  const found = [...(LENIENT.get(word.toLowerCase()) ?? [])];
  const [first] = found;
  if (!first) return null;
  if (found.length > 1) {
    return { refused: `${word} could be ${found.map((unit) => unit.name).join(" or ")}. Write which.` };
  }
  if (word.startsWith("M") && THOUSANDTHS.has(first.name) && word.length <= 4) {
    return { refused: `${word} with a capital M would mean millions. Write ${first.name}.` };
  }
  return { unit: first };
}

/** The unit a word stands for: as written, then in any case of letters where only one unit fits. Null if none does. */
export function lookUp(word: string): Lookup | null {
  const exact = EXACT.get(word);
  if (exact) return { unit: exact };
  const trap = TRAPS.get(word);
  return trap === undefined ? lenient(word) : { refused: trap };
}

/** Whether a unit may have been meant. */
export type MayBe = (unit: NamedUnit) => boolean;

/** The known word nearest to a misspelt one among those that may be meant, or null where none is near. */
export function nearest(word: string, mayBe: MayBe = () => true): string | null {
  const known = [...LENIENT].flatMap(([one, units]) => ([...units].some(mayBe) ? [one] : []));
  const best = nearestOf(word.toLowerCase(), known);
  return (best === null ? undefined : [...(LENIENT.get(best) ?? [])].find(mayBe))?.name ?? null;
}
