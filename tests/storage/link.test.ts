import { deflateSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setGiven, setMeasured } from "../../src/document/edits.ts";
import { keepBeside, planNamed } from "../../src/document/plan-edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import {
  LARGEST_UNPACKED,
  type LinkOptions,
  LONGEST_LINK,
  worksheetFromLink,
  worksheetToLink,
} from "../../src/storage/link.ts";
import { isWorksheetLink } from "../../src/storage/link-mark.ts";
import { fromLetters, toLetters } from "../../src/storage/squeeze.ts";
import { anyEntry, fixture, ROLES } from "../document/made-up.ts";
import { tries } from "../tries.ts";
import { madeUpRecord } from "./made-up.ts";

const NOTHING: LinkOptions = { records: new Map(), normals: null, exactPlace: true, notes: true };
const NORMALS = { normal_rain: { value: Array(12).fill(50), unit: "mm", from: "borrowed" as const } };
const withRecord = (key: string) => setGiven(fixture(), "weather", "record", { value: key, unit: "" });

async function made(worksheet: Worksheet, options: LinkOptions = NOTHING) {
  const link = await worksheetToLink(worksheet, options);
  if (!link.ok) throw new Error(link.reason);
  return link;
}

async function opened(fragment: string) {
  const reading = await worksheetFromLink(fragment, recordKey);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading;
}

async function reasonOf(fragment: string) {
  const reading = await worksheetFromLink(fragment, recordKey);
  return reading.ok ? "was read" : reading.problems[0]?.message;
}

const packed = (text: string) => `w1=${toLetters(deflateSync(text))}`;

describe("a worksheet as a link", () => {
  test("opens the same, with or without the # before it, and is plain letters", async () => {
    const sheet = withRecord("");
    const { fragment, leftOut } = await made(sheet);
    expect(fragment).toMatch(/^w1=[A-Za-z0-9_-]+$/);
    expect(leftOut).toEqual([]);
    expect(isWorksheetLink(`#${fragment}`)).toBe(true);
    expect((await opened(fragment)).worksheet).toEqual(sheet);
    expect((await opened(`#${fragment}`)).worksheet).toEqual(sheet);
  });

  test("holds what was noted only where it is asked for", async () => {
    const told = await opened((await made(fixture())).fragment);
    expect(told.worksheet.notes).toEqual(fixture().notes);
    const bare = await opened((await made(fixture(), { ...NOTHING, notes: false })).fragment);
    expect(bare.worksheet).not.toHaveProperty("notes");
  });

  test(`${tries(200)} worksheets of any entries come back the same`, async () => {
    await fc.assert(
      fc.asyncProperty(fc.dictionary(fc.stringMatching(/^[a-z]{1,9}$/), anyEntry), async (entries) => {
        // Prototype names are refused on reading, so no worksheet on the page can have them.
        fc.pre(["constructor", "prototype"].every((name) => !Object.hasOwn(entries, name)));
        let sheet = withRecord("");
        for (const [name, entry] of Object.entries(entries))
          sheet = setGiven(sheet, "blue_tank", name, entry);
        expect((await opened((await made(sheet)).fragment)).worksheet).toEqual(sheet);
      }),
      { numRuns: tries(200) },
    );
  });

  test("a short record travels inside, exactly", async () => {
    const record = madeUpRecord(Array.from({ length: 365 }, (_, day) => (day % 4 ? 0 : (day % 23) / 1000)));
    const sheet = withRecord(record.key);
    const link = await made(sheet, { ...NOTHING, records: new Map([[record.key, record]]) });
    const reading = await opened(link.fragment);
    expect(link.leftOut).toEqual([]);
    expect(reading.records).toEqual([record]);
    expect(reading.worksheet).toEqual(sheet);
  });

  test("a long record stays behind, its normals travel, and that is said", async () => {
    let noise = 1;
    const rain = Array.from({ length: 20_000 }, () => {
      noise = (noise * 16_807) % 2_147_483_647;
      return (noise % 997) / 10 / 1000;
    });
    const record = madeUpRecord(rain);
    const link = await made(withRecord(record.key), {
      ...NOTHING,
      records: new Map([[record.key, record]]),
      normals: NORMALS,
    });
    expect(link.fragment.length).toBeLessThanOrEqual(LONGEST_LINK);
    expect(link.leftOut[0]).toContain("too long for a link");
    const reading = await opened(link.fragment);
    const weather = reading.worksheet.cards.find((card) => card.id === "weather");
    expect(weather?.givens).toMatchObject({ ...NORMALS, record: { value: "", unit: "" } });
    expect(reading.records).toEqual([]);
  });

  test("a short record left out on wish is said to sender and receiver, and no mark of it stays", async () => {
    const record = madeUpRecord(Array.from({ length: 365 }, (_, day) => (day % 4 ? 0 : 0.01)));
    const sheet = withRecord(record.key);
    const options = { ...NOTHING, records: new Map([[record.key, record]]), normals: NORMALS };
    expect((await made(sheet, options)).hasRecord).toBe(true);
    const link = await made(sheet, { ...options, withoutRecords: true });
    expect(link.hasRecord).toBe(false);
    expect(link.leftOut).toEqual([
      "Your rain record stays here and twelve monthly figures of it travel instead, so the answers will differ.",
    ]);
    const { worksheet, notes } = await opened(link.fragment);
    expect(notes[0]).toContain("The maker's own rain record did not come with the link.");
    expect(worksheet.cards.find(({ id }) => id === "weather")?.givens).toMatchObject(NORMALS);
    expect(Object.keys(worksheet).sort()).toEqual(Object.keys(sheet).sort());
    // What names no record leaves none out.
    const none = await made(withRecord(""), { ...options, withoutRecords: true });
    expect([none.leftOut, (await opened(none.fragment)).notes]).toEqual([[], []]);
  });

  test("the latitude goes to a tenth of a degree unless asked, whatever its unit, measured and in plans too", async () => {
    let sheet = setGiven(withRecord(""), "site", "latitude", { value: 44.2468, unit: "deg" });
    sheet = setMeasured(sheet, "site", "latitude", { value: 0.7722, unit: "rad" });
    const moved = setGiven(sheet, "site", "latitude", { value: 51.5074, unit: "deg" });
    sheet = keepBeside(moved, sheet, "elsewhere", ROLES);
    const site = (reading: { worksheet: Worksheet }) => reading.worksheet.cards[0];
    const read = await opened((await made(sheet, { ...NOTHING, exactPlace: false })).fragment);
    const rough = site(read);
    expect(planNamed(read.worksheet, "elsewhere")?.changes[0]?.entry?.value).toBe(51.5);
    expect(rough?.givens.latitude).toEqual({ value: 44.2, unit: "deg" });
    // 0.7722 rad is 44.2438 degrees
    expect(rough?.measured.latitude).toEqual({ value: 44.2, unit: "deg" });
    const exact = site(await opened((await made(sheet)).fragment));
    expect(exact?.givens.latitude?.value).toBe(44.2468);
  });

  test("a worksheet too long for a link is told so", async () => {
    const link = await worksheetToLink(withRecord(""), { ...NOTHING, longest: 300 });
    expect(link).toEqual({ ok: false, reason: "This worksheet is too long for a link. Send it as a file." });
  });
});

describe("a link that is wrong", () => {
  test.each([
    ["nothing", "", "This is not a link to a worksheet."],
    ["a place on the page", "#answers", "This is not a link to a worksheet."],
    ["a newer kind", "#w2=abcd", "This link was made by a newer version. Reload the page and try again."],
    ["no letters", "w1=", "This link was cut off or changed on its way."],
    ["foreign letters", "w1=ab$d", "This link was cut off or changed on its way."],
    ["an impossible length", "w1=abcde", "This link was cut off or changed on its way."],
    ["noise", "w1=abcdabcdabcd", "This link was cut off or changed on its way."],
    ["no worksheet", packed("[1,2]"), "This is not a worksheet."],
    ["no JSON", packed("hello"), "This link was cut off or changed on its way."],
    ["far too many letters", `w1=${"a".repeat(2_000_004)}`, "This link is far too long for a worksheet."],
  ])("%s has its reason", async (_what, fragment, reason) => {
    expect(await reasonOf(fragment)).toBe(reason);
  });

  test("a bomb of 200 MB in 200 kB is stopped after its first megabyte", async () => {
    const bomb = packed("0".repeat(200_000_000));
    expect(bomb.length).toBeLessThan(300_000);
    const before = process.cpuUsage();
    expect(await reasonOf(bomb)).toBe(
      "This link unpacks to more than a worksheet can be. It was not opened.",
    );
    // A second of work, whatever else the machine does: all of it would be several.
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(1);
  });

  test("a text at the limit is still looked at, one past it is not", async () => {
    const padded = (size: number) => packed(`[1,2]${" ".repeat(size - 5)}`);
    expect(await reasonOf(padded(LARGEST_UNPACKED))).toBe("This is not a worksheet.");
    expect(await reasonOf(padded(LARGEST_UNPACKED + 1))).toContain("unpacks to more");
  });

  test("bytes that are no text are refused", async () => {
    expect(await reasonOf(`w1=${toLetters(deflateSync(Buffer.from([0xff, 0xfe, 0x80])))}`)).toContain(
      "cut off or changed",
    );
  });

  test(`${tries(2000)} links cut or changed somewhere never throw and never read as another worksheet`, async () => {
    const sheet = withRecord("");
    const { fragment } = await made(sheet);
    const letters = fc.string({ unit: fc.constantFrom(..."ABCxyz019-_$ "), maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(fc.nat(fragment.length), fc.nat(8), letters, async (from, length, put) => {
        const reading = await worksheetFromLink(
          fragment.slice(0, from) + put + fragment.slice(from + length),
          recordKey,
        );
        if (reading.ok) expect(reading.worksheet).toEqual(sheet);
        else expect(reading.problems[0]?.message).not.toBe("");
      }),
      { numRuns: tries(2000) },
    );
  });

  test(`${tries(1000)} of any text never throw`, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: "binary", maxLength: 200 }),
        fc.boolean(),
        async (text, isPacked) => {
          const reading = await worksheetFromLink(isPacked ? packed(text) : `w1=${text}`, recordKey);
          expect(reading.ok).toBe(false);
        },
      ),
      { numRuns: tries(1000) },
    );
  });
});

test("any bytes become letters and bytes again", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 20_000 }), (bytes) => {
      expect(fromLetters(toLetters(bytes))).toEqual(Uint8Array.from(bytes));
    }),
  );
});
