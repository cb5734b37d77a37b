/** Signals that arrive within this time count as one burst. */
const BURST_MILLISECONDS = 100;

export interface Burst {
  /** Asynchronous because Excel awaits its event handlers. */
  signal(): Promise<void>;
  stop(): void;
}

/**
 * Answers a burst of signals once: `prepare` asks Excel, and what it returns tells the listener, unless the
 * listener stopped meanwhile. The clock starts at the first signal, so that a sheet that never rests is heard too.
 */
export function gather(prepare: () => Promise<() => void>, onTrouble: (error: unknown) => void): Burst {
  let timer: ReturnType<typeof setTimeout> | null = null;
  let stopped = false;
  const answer = async () => {
    timer = null;
    const tell = await prepare();
    if (!stopped) tell();
  };
  return {
    async signal() {
      if (!stopped) timer ??= setTimeout(() => void answer().catch(onTrouble), BURST_MILLISECONDS);
    },
    stop() {
      stopped = true;
      if (timer !== null) clearTimeout(timer);
    },
  };
}
