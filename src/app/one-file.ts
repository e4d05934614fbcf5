// The one script of the page in one file: the page itself, or one of its workers.

if (typeof document !== "undefined") void import("./main.tsx");
else if (self.name === "asked") void import("../worker/asking-entry.ts");
else void import("../worker/entry.ts");
