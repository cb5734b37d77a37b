/** Tells at the next start that this one did not come to its end: the page crashed, hung, or was left waiting. */
const KEY = "soakbook.start.unfinished";
/** Whoever leaves sooner has changed their mind; later they have given up waiting. */
const PATIENCE_MILLISECONDS = 10_000;

export interface Start {
  /** The workbook is open and computed. */
  isFinished(): void;
}

/** Whether an earlier start was cut short; one that is still going on in another tab was not. */
export async function lastStartWasCutShort(): Promise<boolean> {
  const earlier = marked();
  if (earlier === null) return false;
  const { held = [] } = "locks" in navigator ? await navigator.locks.query() : {};
  return !held.some(({ name }) => name === earlier);
}

/** Ask `lastStartWasCutShort` first: this start leaves its own mark over the last one's. */
export function startBegins(): Start {
  const name = `soakbook start ${Date.now()} ${Math.random().toString(36).slice(2)}`;
  let isOver = (): void => undefined;
  // The browser lets go of a lock when its page is gone, however it went.
  if ("locks" in navigator)
    void navigator.locks.request(name, () => new Promise<void>((resolve) => (isOver = resolve))).catch(() => undefined);
  mark(name);
  const finish = (): void => {
    window.removeEventListener("pagehide", leave);
    if (marked() === name) mark(null);
    isOver();
  };
  const leave = (): void => {
    if (performance.now() < PATIENCE_MILLISECONDS) finish();
  };
  window.addEventListener("pagehide", leave);
  return { isFinished: finish };
}

// A browser that keeps nothing has no workbook to be cautious about either.
function marked(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function mark(name: string | null): void {
  try {
    if (name === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, name);
  } catch {
    return;
  }
}
