// What is typed of a count as its sentence says it: "10 days", "6 of 20 seasons".

const TAIL = /^(\s*[\d.,]+)\s+(.+)$/u;
/** Ends of a plural. */
const PLURAL = /s$/u;

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== "")
    .map((word) => word.replace(PLURAL, ""));

/** The number alone where all that follows it are words of what is said of it; else the text as it is. */
export function withoutSaid(text: string, about: string): string {
  const [, number, tail = ""] = TAIL.exec(text.replaceAll("\u00a0", " ")) ?? [];
  if (number === undefined) return text;
  const said = new Set(wordsOf(about));
  return wordsOf(tail).every((word) => said.has(word)) ? number : text;
}
