// Workers of the page in one file: its own script once more, out of a blob, told by its name what it is (one-file.ts).

const ownScript = (): Blob =>
  new Blob([document.getElementById("program")?.textContent ?? ""], { type: "text/javascript" });

let address: string | null = null;

function start(name: string): Worker {
  address ??= URL.createObjectURL(ownScript());
  return new Worker(address, { name });
}

/** Runs heavy models, keeps records and reads rain files. */
export const startSeasonWorker = (): Worker => start("season");

/** Is asked about whole worksheets. */
export const startAskedWorker = (): Worker => start("asked");
