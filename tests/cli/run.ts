// The command line as a test runs it: in this process, since one of its own for every case would mostly be starting.

import { vi } from "vitest";
import { main } from "../../src/cli/main.ts";

export type Ran = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

export async function run(...words: string[]): Promise<Ran> {
  const said = { stdout: "", stderr: "" };
  const spies = (["stdout", "stderr"] as const).map((name) =>
    vi.spyOn(process[name], "write").mockImplementation((text) => {
      said[name] += text;
      return true;
    }),
  );
  try {
    return { status: await main(words), ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

const known = new Map<string, Promise<Ran>>();

/** The same words are run once: what is said of them hangs on nothing else (G1). Not for files that a test changes. */
export function runOnce(...words: string[]): Promise<Ran> {
  const key = JSON.stringify(words);
  const before = known.get(key);
  if (before) return before;
  const ran = run(...words);
  known.set(key, ran);
  return ran;
}
