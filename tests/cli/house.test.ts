import { mkdtempSync, writeFileSync } from "node:fs";
import { request, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { hostname, tmpdir } from "node:os";
import { join } from "node:path";
import jsQR from "jsqr";
import { afterEach, describe, expect, test } from "vitest";
import { answersTo, codeInLetters, houseAddresses, houseSaid } from "../../src/cli/house.mjs";
import { serve } from "../../src/cli/serve.mjs";

const folder = mkdtempSync(join(tmpdir(), "eavesdrip-house-"));
writeFileSync(join(folder, "index.html"), "<!doctype html>here");

let server: Server | null = null;
afterEach(() => {
  server?.close();
});

async function serving(house: boolean): Promise<number> {
  ({ server } = (await serve(0, folder, { house })) as { server: Server });
  return (server.address() as AddressInfo).port;
}

/** What an address answers: its status, or why it cannot be reached. */
function asked(address: string, port: number, host = `${address}:${port}`): Promise<number | string> {
  return new Promise((resolve) => {
    request({ host: address, port, path: "/", headers: { host } }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    })
      .on("error", (error: NodeJS.ErrnoException) => resolve(error.code ?? "?"))
      .end();
  });
}

describe("served to this machine, or to the house", () => {
  test("without --house nothing is served at 127.0.0.2; with it, it is", async () => {
    const alone = await serving(false);
    expect(await asked("127.0.0.1", alone)).toBe(200);
    expect(await asked("127.0.0.2", alone)).toBe("ECONNREFUSED");
    server?.close();
    const all = await serving(true);
    expect(await asked("127.0.0.1", all)).toBe(200);
    expect(await asked("127.0.0.2", all)).toBe(200);
  });

  test("a name of somebody else's that leads here gets nothing", async () => {
    const port = await serving(true);
    for (const host of ["evil.example", `evil.example:${port}`, "127.0.0.1.evil.example", "a b"])
      expect(await asked("127.0.0.1", port, host), host).toBe(421);
    expect(await asked("127.0.0.1", port, `${hostname()}.local`)).toBe(200);
  });

  test("an address of the house's network is one of this machine's only where the house is served", () => {
    for (const host of ["192.168.1.7:4173", "[fd00::7]:4173", hostname()]) {
      expect(answersTo(host, true), host).toBe(true);
      expect(answersTo(host, false), host).toBe(false);
    }
    for (const host of ["localhost:4173", "127.0.0.2", "[::1]:1"]) expect(answersTo(host, false)).toBe(true);
    for (const none of [undefined, ""]) expect(answersTo(none, true)).toBe(false);
  });
});

describe("what the terminal says", () => {
  const wifi = { address: "192.168.1.7", netmask: "255.255.255.0", mac: "", internal: false, cidr: null };

  test("the house's addresses, of which the first is in the code", () => {
    const addresses = houseAddresses(4173, {
      lo: [{ ...wifi, address: "127.0.0.1", family: "IPv4", internal: true }],
      wlan0: [{ ...wifi, family: "IPv4" }],
    });
    expect(addresses).toEqual(["http://192.168.1.7:4173/"]);
    const said = houseSaid(addresses, false);
    expect(said).toContain("On a phone in the same house: http://192.168.1.7:4173/");
    expect(said).toContain("it opens only while this runs");
    expect(houseSaid([], false)).toContain("on no network");
  });

  test("the code in letters is read by a phone", () => {
    const text = "http://192.168.1.7:4173/";
    const lines = codeInLetters(text, false).split("\n");
    const [width, height, scale] = [lines[0]?.length ?? 0, lines.length * 2, 4];
    const pixels = new Uint8ClampedArray(width * height * scale * scale * 4);
    for (let y = 0; y < height * scale; y++) {
      for (let x = 0; x < width * scale; x++) {
        const row = Math.floor(y / scale);
        const letter = lines[row >> 1]?.[Math.floor(x / scale)] ?? "";
        const isLight = letter === "█" || letter === (row % 2 === 0 ? "▀" : "▄");
        pixels.fill(isLight ? 255 : 0, (y * width * scale + x) * 4, (y * width * scale + x) * 4 + 3);
      }
    }
    expect(jsQR(pixels, width * scale, height * scale)?.data).toBe(text);
  });
});
