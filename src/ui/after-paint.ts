// What may wait until what stands in the document has been painted.

/** A page that nobody sees paints nothing: there it goes by the clock [ms]. */
const UNSEEN = 500;

/** Calls back in a task of its own so long after the next frame [ms]; returns what calls it off. */
export function afterPaint(then: () => void, wait = 0): () => void {
  let timer = setTimeout(then, UNSEEN);
  // A timer that is set in the frame may go off before the frame is shown; a message comes after it.
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    timer = setTimeout(then, wait);
  };
  const frame = requestAnimationFrame(() => {
    clearTimeout(timer);
    port2.postMessage(null);
  });
  return () => {
    clearTimeout(timer);
    cancelAnimationFrame(frame);
    port1.close();
  };
}

/** A promise, and what resolves it. */
function moment(): { readonly come: Promise<void>; readonly comes: () => void } {
  let resolve: () => void = () => undefined;
  const come = new Promise<void>((done) => {
    resolve = done;
  });
  return { come, comes: () => resolve() };
}

const painted = moment();
const worked = moment();

/** Resolves once the first answers have been painted. */
export const firstPaint: Promise<void> = painted.come;

/** Resolves once all of the worksheet is worked out whose first answers those are: whatever else is shown reads it. */
export const wholeWorked: Promise<void> = worked.come;

/** Said by the page as the answers come to stand in the document. */
export const answersStand = (): void => {
  afterPaint(painted.comes);
};

/** Said by who works it out. */
export const wholeIsWorked = worked.comes;
