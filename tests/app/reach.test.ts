import { describe, expect, test } from "vitest";
import { reachOf } from "../../src/app/reach.ts";

const reach = (address: string) => reachOf(new URL(address));

describe("from where a link opens", () => {
  test.each([
    ["file:///garden.html", "file"],
    ["http://localhost:4173/", "computer"],
    ["http://127.0.0.2:4173/", "computer"],
    ["http://[::1]:4173/", "computer"],
    ["http://192.168.1.7:4173/", "house"],
    ["http://10.0.0.7/", "house"],
    ["http://172.20.10.2/", "house"],
    ["http://169.254.3.4/", "house"],
    ["http://[fd00::7]/", "house"],
    ["http://[fe80::7]/", "house"],
    ["http://shed.local:4173/", "house"],
    ["http://shed/", "house"],
    ["http://172.32.0.1/", "anywhere"],
    ["https://garden.example/rain/", "anywhere"],
    ["https://localhost.example/", "anywhere"],
    ["https://10.example/", "anywhere"],
    ["https://fd.example/", "anywhere"],
    ["http://[2001:db8::1]/", "anywhere"],
  ])("%s: %s", (address, wanted) => {
    expect(reach(address)).toBe(wanted);
  });
});
