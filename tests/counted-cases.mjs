// Says where the numbers of the worked examples come from, so that nobody takes our own arithmetic for a check from outside.
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const FOLDER = fileURLToPath(new URL("cases/", import.meta.url));

/** Words of a case's status, and what the report calls it. */
const CALLED = {
  read: "read in a published source",
  "read second-hand": "read second-hand",
  "from memory": "from memory",
  "computed by a general reference library": "computed by a general reference library",
  "our own arithmetic": "our own arithmetic",
};

/** How many worked examples there are of each status, as one paragraph. */
export function countedCases() {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));
  const statuses = files.flatMap((name) =>
    JSON.parse(readFileSync(`${FOLDER}${name}`, "utf8")).map(({ status }) => status),
  );
  const count = (status) => statuses.filter((one) => one === status).length;
  const outside = count("read") + count("read second-hand");
  const lines = Object.entries(CALLED).map(([status, called]) => `  ${count(status)} ${called}`);
  return [`${statuses.length} worked examples, ${outside} of them from outside:`, ...lines].join("\n");
}
