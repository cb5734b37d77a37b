/**
 * Told between the pieces of a long write how much of it is done, from 0 to 1. The next piece waits for the answer, so
 * that a pane can say it, and a page that draws can draw.
 */
export type Progress = (share: number) => Promise<void>;

export const nobodyWaits: Progress = () => Promise.resolve();
