/** A name for what we add that stands over nothing of theirs: "Drawdown", or "Drawdown (DRAWDOWN)" where they have one of their own. */
export function freeName(name: string, isTaken: (name: string) => boolean, functionName: string): string {
  return isTaken(name) ? freeName(`${name} (${functionName})`, isTaken, functionName) : name;
}
