import { describe, expect, test } from "vitest";
import { type Adaptor, inSi, missesOf, STATUSES, type WorkedCase } from "./worked-case.ts";

const files = import.meta.glob<readonly WorkedCase[]>("./*.json", { eager: true, import: "default" });
const modules = import.meta.glob<{ readonly functions: Record<string, Adaptor> }>("./functions/*.ts", {
  eager: true,
});

const cases = Object.values(files).flat();
const adaptors: Record<string, Adaptor> = {};
for (const { functions } of Object.values(modules)) Object.assign(adaptors, functions);

for (const [file, worked] of Object.entries(files)) {
  describe(`worked examples in ${file.slice(2)}`, () => {
    for (const one of worked) {
      test(`${one.source} / ${one.locator} / ${Object.keys(one.expect).join(", ")} [${one.id}]`, () => {
        const adaptor = adaptors[one.of];
        expect(adaptor, `adaptor "${one.of}"`).toBeDefined();
        const result = (adaptor as Adaptor)(inSi(one.given));
        expect(missesOf(one, result)).toEqual([]);
      });
    }
  });
}

describe("every worked example", () => {
  test("names its source, its status and why its tolerance is what it is", () => {
    const wrong = cases.filter(
      (one) =>
        !one.source?.trim() ||
        !one.locator?.trim() ||
        !STATUSES.includes(one.status) ||
        !one.tolerance?.why?.trim() ||
        Object.keys(one.expect ?? {}).length === 0 ||
        (one.tolerance.relative === undefined && one.tolerance.absolute === undefined),
    );
    expect(wrong.map(({ id }) => id)).toEqual([]);
  });

  test("has an id of its own", () => {
    const ids = cases.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  test("that is marked as a misprint shows a printed value which its own formula misses", () => {
    const idle = cases.filter((one) => one.slip !== undefined && missesOf(one, siValues(one), one.printed ?? {}).length === 0);
    expect(idle.map(({ id }) => id)).toEqual([]);
  });

  test("uses an adaptor, and no adaptor of the same name is defined twice", () => {
    const names = Object.values(modules).flatMap(({ functions }) => Object.keys(functions));
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    const used = new Set(cases.map((one) => one.of));
    expect(names.filter((name) => !used.has(name))).toEqual([]);
  });

  test("counts, of those read in a published source, at least 120", () => {
    expect(cases.filter(({ status }) => status === "read").length).toBeGreaterThanOrEqual(120);
  });

  test("names the library, where a reference library computed it", () => {
    const nameless = cases.filter(
      ({ status, source }) =>
        status === "computed by a general reference library" && !/fluids|scipy|numpy|iapws/.test(source),
    );
    expect(nameless.map(({ id }) => id)).toEqual([]);
  });
});

/** The expected values in SI, as if they had been computed. */
function siValues(one: WorkedCase): Record<string, number> {
  const values = Object.fromEntries(Object.entries(one.expect).map(([name, value]) => [name, value as never]));
  return inSi(values) as Record<string, number>;
}
