// How a text is divided: its line ends and the mark between its columns, told from its first lines.

const DELIMITERS = [",", ";", "\t", "|"] as const;
const SAMPLE_CHARACTERS = 65_536;
const SAMPLE_LINES = 400;

/** The line end of a text. */
export function lineEnd(text: string): "\n" | "\r\n" | "\r" {
  const sample = text.slice(0, SAMPLE_CHARACTERS);
  const at = sample.search(/[\r\n]/);
  if (at < 0 || sample[at] === "\n") return "\n";
  return sample[at + 1] === "\n" ? "\r\n" : "\r";
}

function countOutsideQuotes(line: string, mark: string): number {
  let [count, quoted] = [0, false];
  for (const character of line) {
    if (character === '"') quoted = !quoted;
    else if (character === mark && !quoted) count++;
  }
  return count;
}

/** How many lines hold the most usual number (above none) of the mark. */
function agreement(lines: readonly string[], mark: string): number {
  const tally = new Map<number, number>();
  for (const line of lines) {
    const count = countOutsideQuotes(line, mark);
    if (count > 0) tally.set(count, (tally.get(count) ?? 0) + 1);
  }
  return Math.max(0, ...tally.values());
}

/**
 * The mark between columns. A semicolon or tab that stands in most lines wins over a comma, which may be decimal.
 */
export function delimiterOf(text: string): string {
  const lines = text
    .slice(0, SAMPLE_CHARACTERS)
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== "" && !line.startsWith("#"))
    .slice(-SAMPLE_LINES);
  for (const mark of [";", "\t", "|"] as const) {
    if (agreement(lines, mark) * 2 > lines.length) return mark;
  }
  const best = DELIMITERS.map((mark) => ({ mark, lines: agreement(lines, mark) })).sort(
    (a, b) => b.lines - a.lines,
  )[0];
  return best && best.lines > 0 ? best.mark : ",";
}

/** Text of bytes: UTF-16 by its mark, UTF-8 where the bytes allow it, else Latin-1 as older services write. */
export function decoderFor(start: Uint8Array): TextDecoder {
  if (start[0] === 0xff && start[1] === 0xfe) return new TextDecoder("utf-16le");
  if (start[0] === 0xfe && start[1] === 0xff) return new TextDecoder("utf-16be");
  try {
    // A character cut off at the end of the sample is no error while more is to come.
    new TextDecoder("utf-8", { fatal: true }).decode(start, { stream: true });
    return new TextDecoder("utf-8");
  } catch {
    return new TextDecoder("windows-1252");
  }
}
