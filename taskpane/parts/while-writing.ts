/** Long writes go in pieces. What follows the workbook waits for the last of them, or it would read everything anew after each. */
let lastWrite: Promise<unknown> = Promise.resolve();

export function isWriting(write: Promise<unknown>): void {
  lastWrite = write;
}

/** Resolves when the writes asked for so far are done, whatever became of them. */
export function afterWriting(): Promise<void> {
  return lastWrite.then(
    () => undefined,
    () => undefined,
  );
}

/** Resolves when what was just said stands on the screen. A page that nobody sees draws nothing, and is not waited for. */
export function drawn(): Promise<void> {
  return new Promise((resolve) => {
    const unseen = setTimeout(resolve, LONGEST_FRAME_MILLISECONDS);
    requestAnimationFrame(() => {
      clearTimeout(unseen);
      setTimeout(resolve);
    });
  });
}

const LONGEST_FRAME_MILLISECONDS = 100;
