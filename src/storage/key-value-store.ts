// The little that the shelf asks of the place where things are kept.

export type KeyValueStore = {
  readonly get: (key: string) => Promise<unknown>;
  readonly set: (key: string, value: unknown) => Promise<void>;
  readonly del: (key: string) => Promise<void>;
  readonly keys: () => Promise<readonly string[]>;
  /** Reads and writes in one go: nobody else writes in between. */
  readonly update: (key: string, next: (before: unknown) => unknown) => Promise<void>;
};
