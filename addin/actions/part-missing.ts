/** Parts of the pane are fetched when they are first asked for; a host that was updated meanwhile has them no more. */

/** What to do where an error means that a part did not load, in the words of any browser; null for another error. */
export function partMissing(error: unknown): string | null {
  return /dynamically imported module|importing a module script failed|module script/i.test(reasonOf(error)) ? PART_MISSING : null;
}

export function reasonOf(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).replace(/\.+$/, "");
}

const PART_MISSING = "A part of Soakbook did not load. Check the connection, then close this pane and open it again.";
