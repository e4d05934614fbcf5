// Who can open a link to this page, by the address it stands at.

import type { Reach } from "../ui/dialogs/keeping.ts";

const HERE = /^(?:localhost|.*\.localhost|127(?:\.\d+){3}|\[::1\])$/;
/** Addresses that are given out inside a house, and names that are only known there. */
const HOUSE =
  /^(?:10(?:\.\d+){3}|192\.168(?:\.\d+){2}|172\.(?:1[6-9]|2\d|3[01])(?:\.\d+){2}|169\.254(?:\.\d+){2}|\[f(?:[cd]|e[89ab]).*\]|[^.:]+|.*\.(?:local|lan|home\.arpa|internal))$/;

/** From where a link to an address opens. */
export function reachOf({
  protocol,
  hostname,
}: {
  readonly protocol: string;
  readonly hostname: string;
}): Reach {
  if (protocol === "file:") return "file";
  if (HERE.test(hostname)) return "computer";
  return HOUSE.test(hostname) ? "house" : "anywhere";
}
