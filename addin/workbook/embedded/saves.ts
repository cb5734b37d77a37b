/** Which saves the browser keeps. */
export interface Save {
  /** Where its content is kept. */
  readonly slot: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
  /** One number for all saves between opening the page and leaving it. */
  readonly sitting: number;
  readonly isDemo: boolean;
}

const SAVES_KEPT = 3;

/** A place that no kept save stands in. */
export function freeSlot(saves: readonly Save[]): number {
  const taken = new Set(saves.map(({ slot }) => slot));
  let slot = 0;
  while (taken.has(slot)) slot += 1;
  return slot;
}

/**
 * What stays when another save is added: the last three, and the last one of the sitting before, since three saves of one
 * sitting are soon made. The demo's saves and a person's own are counted apart: looking at the demo pushes nothing out.
 */
export function afterSaving(before: readonly Save[], save: Save): { readonly kept: readonly Save[]; readonly dropped: readonly Save[] } {
  const alike = [save, ...before.filter(({ isDemo }) => isDemo === save.isDemo)];
  const staying = new Set(alike.slice(0, SAVES_KEPT));
  const sittingBefore = alike.find(({ sitting }) => sitting !== save.sitting);
  if (sittingBefore !== undefined) staying.add(sittingBefore);
  const stays = (one: Save): boolean => one.isDemo !== save.isDemo || staying.has(one);
  return { kept: [save, ...before].filter(stays), dropped: before.filter((one) => !stays(one)) };
}
