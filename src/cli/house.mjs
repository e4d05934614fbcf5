// The worksheet for the phones in the same house: under which names this machine answers, and what is said of it.
import { isIP } from "node:net";
import { hostname, networkInterfaces } from "node:os";
import { generate } from "lean-qr";

const ownNames = () => [hostname(), `${hostname()}.local`].map((name) => name.toLowerCase());

function nameIn(host) {
  try {
    return new URL(`http://${host}`).hostname.replace(/^\[|\]$/g, "");
  } catch {
    return "";
  }
}

/**
 * Whether a request names this machine. A page from elsewhere can have a name of its own lead here; an address, or a name
 * that is this machine's, it cannot feign.
 *
 * @param host what the request's `Host` says
 */
export function answersTo(host, house) {
  const name = nameIn(host);
  if (name === "localhost" || name === "::1" || (isIP(name) === 4 && name.startsWith("127."))) return true;
  return house && (isIP(name) !== 0 || ownNames().includes(name));
}

/** Addresses of this machine on the house's own network. */
export function houseAddresses(port, interfaces = networkInterfaces()) {
  return Object.values(interfaces)
    .flat()
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => `http://${address}:${port}/`);
}

// Two squares one over the other are one letter; of dark ones the ground shows through.
const LETTERS = { "false,false": "█", "false,true": "▀", "true,false": "▄", "true,true": " " };
const QUIET = 2;

/** An address as a code of letters, dark on light whatever the terminal's own colors are. */
export function codeInLetters(text, isColored) {
  const code = generate(text);
  const isDark = (x, y) => code.get(x, y);
  const lines = [];
  for (let y = -QUIET; y < code.size + QUIET; y += 2) {
    let line = "";
    for (let x = -QUIET; x < code.size + QUIET; x++) line += LETTERS[`${isDark(x, y)},${isDark(x, y + 1)}`];
    lines.push(isColored ? `\u001b[97;40m${line}\u001b[0m` : line);
  }
  return lines.join("\n");
}

/** What the terminal says where the house is served. */
export function houseSaid(addresses, isColored) {
  if (addresses.length === 0) return "This machine is on no network: no phone can reach it.";
  const [first, ...others] = addresses;
  return [
    `On a phone in the same house: ${first}`,
    ...others.map((address) => `or: ${address}`),
    codeInLetters(first, isColored),
    "Whoever is on this network can open the page, and has a worksheet of their own there.",
    "Over plain http a phone does not keep the page: it opens only while this runs. For the far bed, put dist/ on an",
    "https host, or send a page in one file from Share.",
  ].join("\n");
}
