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

let resolve: () => void = () => undefined;

/** Resolves once the first answers have been painted. */
export const firstPaint: Promise<void> = new Promise((done) => {
  resolve = done;
});

/** Said by the page as the answers come to stand in the document. */
export const answersStand = (): void => {
  afterPaint(resolve);
};
