import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readWorksheet } from "../../src/document/check.ts";
import { setWorksheet } from "../../src/document/edits.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import { worksheetFromFileText } from "../../src/storage/file.ts";
import { worksheetToFileText } from "../../src/storage/file-text.ts";
import { withWorksheet } from "../../src/storage/page-file.ts";

const OPENS = '<script type="application/json" id="worksheet">';
const PROGRAM = `<script id="program">const opens = '${OPENS}'; run("$&");</script>`;
const PAGE = `<!doctype html><html><body>${OPENS}</script><div id="page"></div>${PROGRAM}</body></html>`;
const AFTER = PAGE.slice(PAGE.indexOf(OPENS) + OPENS.length);

const read = readWorksheet(
  JSON.parse(readFileSync(new URL("../../templates/hillside-totes.json", import.meta.url), "utf8")),
);
if (!read.ok) throw new Error("The demo is broken.");
const { worksheet } = read;

/** What a browser finds in the element: all up to the first end of a script. */
const heldIn = (page: string): string =>
  page.slice(page.indexOf(OPENS) + OPENS.length).split("</script")[0] ?? "";

const HOSTILE = [
  "</script><script>alert(1)</script>",
  "</SCRIPT >",
  "<!--<script>",
  "-->]]>",
  "$& $` $' $1 $$",
  "\u2028\u2029\u0000\ud800",
  OPENS,
];

describe("a worksheet in the page in one file", () => {
  test.each(HOSTILE)("a title such as %j stays inside its element and comes back as it was", (title) => {
    const text = worksheetToFileText(setWorksheet(worksheet, { title }), new Map());
    const page = withWorksheet(PAGE, text) ?? "";
    expect(page.endsWith(AFTER)).toBe(true);
    expect(heldIn(page)).not.toMatch(/<(?:\/?script|!--)/i);
    const back = worksheetFromFileText(heldIn(page), recordKey);
    const straight = worksheetFromFileText(text, recordKey);
    expect(back).toEqual(straight);
    expect(back.ok).toBe(true);
  });

  test("any text at all comes back, and nothing of the page is moved", () => {
    const texts = fc.oneof(fc.string({ unit: "binary" }), fc.constantFrom(...HOSTILE));
    fc.assert(
      fc.property(fc.array(texts, { maxLength: 4 }), (parts) => {
        const page = withWorksheet(PAGE, JSON.stringify(parts)) ?? "";
        expect(page.endsWith(AFTER)).toBe(true);
        expect(JSON.parse(heldIn(page))).toEqual(parts);
      }),
    );
  });

  test("a second worksheet takes the place of the first", () => {
    const first = withWorksheet(PAGE, JSON.stringify({ a: "</script>" })) ?? "";
    expect(withWorksheet(first, "{}")).toBe(withWorksheet(PAGE, "{}"));
  });

  test("a page that could hold none is refused", () => {
    expect(withWorksheet("<!doctype html><p>Nothing is here.", "{}")).toBe(null);
  });
});
