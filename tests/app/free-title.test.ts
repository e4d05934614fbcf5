import { describe, expect, it } from "vitest";
import { freeTitle } from "../../src/app/free-title.ts";

describe("freeTitle", () => {
  it("keeps a title that is free", () => {
    expect(freeTitle("Hill", new Set(["Dale"]), "Wren")).toBe("Hill");
  });

  it("says who sent it, by the bare name, else counts", () => {
    expect(freeTitle("Hill", new Set(["Hill"]), "Wren (up the lane)")).toBe("Hill (from Wren)");
    expect(freeTitle("Hill", new Set(["Hill"]))).toBe("Hill 2");
    expect(freeTitle("Hill", new Set(["Hill", "Hill 2"]), "  ")).toBe("Hill 3");
    expect(freeTitle("Hill", new Set(["Hill", "Hill (from Wren)"]), "Wren")).toBe("Hill (from Wren) 2");
  });
});
