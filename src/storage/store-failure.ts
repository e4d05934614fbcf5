// What to say when the browser keeps nothing: values, never a throw, and always a way out.

export type StoreFailure = { readonly reason: "full" | "refused"; readonly text: string };

export type Kept<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly failure: StoreFailure };

const WAY_OUT = "Save the worksheet as a file so that nothing is lost.";

function failureOf(error: unknown): StoreFailure {
  const name = typeof error === "object" && error !== null && "name" in error ? String(error.name) : "";
  return name === "QuotaExceededError"
    ? { reason: "full", text: `There is no room left in this browser. ${WAY_OUT}` }
    : { reason: "refused", text: `This browser does not let the page keep anything. ${WAY_OUT}` };
}

/** Runs a piece of keeping; what the browser refuses becomes a value. */
export async function attempt<T>(work: () => Promise<T>): Promise<Kept<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return { ok: false, failure: failureOf(error) };
  }
}
