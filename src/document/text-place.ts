// Where a text stops being JSON, by line and column. Engines word their own messages differently and some name no place.

export type TextPlace = { readonly line: number; readonly column: number; readonly what: string };

const BLANK = /[ \t\n\r]*/y;
const SCALAR =
  /"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|true\b|false\b|null\b/y;
const KEY = /"(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"[ \t\n\r]*:/y;

/** What may come next: a value; a value or the end of a list; a key (or the end); a comma or an end; nothing. */
type Expecting = "value" | "first of list" | "key" | "first key" | "comma" | "end";

type Scan = { at: number; readonly open: string[]; expecting: Expecting };

const WORDS: Readonly<Record<Expecting, string>> = {
  value: "a value should stand here",
  "first of list": "a value or ] should stand here",
  key: "a name in double quotes and a colon should stand here",
  "first key": "a name in double quotes and a colon, or }, should stand here",
  comma: "a comma or a closing bracket should stand here",
  end: "nothing more should follow here",
};

function matchAt(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

function afterValue(scan: Scan, at: number): boolean {
  scan.at = at;
  scan.expecting = scan.open.length > 0 ? "comma" : "end";
  return true;
}

function close(scan: Scan, mark: string): boolean {
  if (scan.open.at(-1) !== mark) return false;
  scan.open.pop();
  return afterValue(scan, scan.at + 1);
}

function open(scan: Scan, mark: string, expecting: Expecting): boolean {
  scan.open.push(mark);
  scan.at += 1;
  scan.expecting = expecting;
  return true;
}

function value(scan: Scan, text: string): boolean {
  const mark = text[scan.at];
  if (mark === "{") return open(scan, "}", "first key");
  if (mark === "[") return open(scan, "]", "first of list");
  if (mark === "]" && scan.expecting === "first of list") return close(scan, "]");
  const end = matchAt(SCALAR, text, scan.at);
  return end > 0 && afterValue(scan, end);
}

function key(scan: Scan, text: string): boolean {
  if (text[scan.at] === "}" && scan.expecting === "first key") return close(scan, "}");
  const end = matchAt(KEY, text, scan.at);
  if (end < 0) return false;
  scan.at = end;
  scan.expecting = "value";
  return true;
}

function comma(scan: Scan, text: string): boolean {
  const mark = text[scan.at];
  if (mark !== ",") return mark !== undefined && close(scan, mark);
  scan.at += 1;
  scan.expecting = scan.open.at(-1) === "}" ? "key" : "value";
  return true;
}

function step(scan: Scan, text: string): boolean {
  if (scan.expecting === "end") return false;
  if (scan.expecting === "comma") return comma(scan, text);
  return scan.expecting === "key" || scan.expecting === "first key" ? key(scan, text) : value(scan, text);
}

/**
 * The first place at which a text is not JSON.
 *
 * @param text a text that is not JSON
 * @returns line and column from 1, and what should stand there
 */
export function placeInText(text: string): TextPlace {
  const scan: Scan = { at: 0, open: [], expecting: "value" };
  do {
    scan.at = matchAt(BLANK, text, scan.at);
  } while (scan.at < text.length && step(scan, text));
  const before = text.slice(0, scan.at);
  const line = before.split("\n").length;
  const column = scan.at - before.lastIndexOf("\n");
  const what = scan.at < text.length ? WORDS[scan.expecting] : "the text ends too early";
  return { line, column, what: `${what}.` };
}
