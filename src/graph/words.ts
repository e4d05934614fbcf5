// What rows and cautions mean and where they come from, apart from what evaluating needs: loaded when somebody asks.

import type { Caution, Row } from "./types.ts";

/** What a row means; where its number comes from stands beside it, unless it is the grower's own entry. */
export type RowWords = string | readonly [help: string, source: string];

/** The words of a card kind by row name and by caution. */
export type KindWords = {
  readonly rows: Readonly<Record<string, RowWords>>;
  readonly cautions: Readonly<Record<string, readonly [text: string, source: string]>>;
  /** What is done with such a part before the first frost, and who says so. */
  readonly frost?: FrostJob;
};

export type FrostJob = {
  readonly text: string;
  readonly source: string;
  /** Only where this link leads somewhere. */
  readonly ifLinked?: string;
};

/** By card kind; empty as long as nothing is loaded. */
export type Words = Readonly<Record<string, KindWords>>;

const YOURS = "your own entry";

const at = <Each>(record: Readonly<Record<string, Each>> | undefined, name: string): Each | undefined =>
  record && Object.hasOwn(record, name) ? record[name] : undefined;

/** What a row means and where its number comes from: from the words of its kind, or as the row itself says. */
export function rowWords(
  words: Words,
  kind: string,
  row: Row,
): { readonly help: string; readonly source: string } {
  const said = at(at(words, kind)?.rows, row.name);
  if (said === undefined) return { help: row.help ?? "", source: row.source ?? "" };
  return typeof said === "string" ? { help: said, source: YOURS } : { help: said[0], source: said[1] };
}

/** What a caution says and who says so; null while its words are not here. */
export function cautionWords(
  words: Words,
  kind: string,
  { id, text, source }: Caution,
): { readonly text: string; readonly source: string } | null {
  const said = at(at(words, kind)?.cautions, id);
  if (said) return { text: said[0], source: said[1] };
  return text === undefined ? null : { text, source: source ?? "" };
}
