/** Asks the browser to keep the page for when there is no connection, where it and the host allow that. */
export async function keepOffline(): Promise<void> {
  if (!isSecureContext || !("serviceWorker" in navigator)) return;
  // A browser that keeps nothing, such as a private window, still runs the page online.
  await navigator.serviceWorker.register("offline-worker.js").catch(() => undefined);
}
