// Bytes made small and big again, and as letters that an address may hold.

// With its check sum: a letter changed on the way is found out, instead of turning into another number.
const FORM = "deflate";

/** Raised where an unpacked text would grow past what was allowed. */
export class TooBig extends Error {}

function streamOf(bytes: Uint8Array<ArrayBuffer>): ReadableStream<Uint8Array<ArrayBuffer>> {
  return new ReadableStream({
    start(controller) {
      controller.enqueue(bytes);
      controller.close();
    },
  });
}

async function gather(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array<ArrayBuffer>> {
  const reader = stream.getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    size += part.value.length;
    if (size > most) {
      // The sender of a bomb is not waited for; what the stream says on being stopped is of no interest.
      reader.cancel().catch(() => undefined);
      throw new TooBig();
    }
    parts.push(part.value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Packed bytes. */
export async function deflate(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const packed = streamOf(bytes).pipeThrough(new CompressionStream(FORM));
  return gather(packed, Number.POSITIVE_INFINITY);
}

/**
 * Unpacked bytes.
 *
 * @param most bytes at which unpacking stops
 * @throws TooBig beyond that; whatever the engine throws where the bytes are broken
 */
export async function inflate(
  bytes: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<Uint8Array<ArrayBuffer>> {
  return gather(streamOf(bytes).pipeThrough(new DecompressionStream(FORM)), most);
}

const SLICE = 8192;

/** Bytes as letters, digits, `-` and `_`. */
export function toLetters(bytes: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < bytes.length; at += SLICE) {
    binary += String.fromCharCode(...bytes.subarray(at, at + SLICE));
  }
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** Bytes out of letters, or null where a letter is none of them. */
export function fromLetters(letters: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[A-Za-z0-9_-]*$/.test(letters) || letters.length % 4 === 1) return null;
  const binary = atob(letters.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
