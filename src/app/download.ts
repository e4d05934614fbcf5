// Handing a file to the browser to save, and to the device to pass on.

/** Saves text as a file. */
export function download(name: string, text: string, type = "application/json"): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A title as the stem of a file name. */
export const fileStem = (title: string): string =>
  title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "") || "worksheet";

/** Hands something to the device's own sheet for passing on; a reader who changes his mind is no error. */
export function passOn(what: ShareData): void {
  navigator.share(what).catch(() => undefined);
}
