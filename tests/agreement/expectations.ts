/** Checks that run wherever a case runs: inside a page there is no test runner. */
export function expectEqual(actual: unknown, expected: unknown, what: string): void {
  if (asText(actual) === asText(expected)) return;
  throw new Error(`${what}: expected ${asText(expected)} but got ${asText(actual)}`);
}

/** The promise must be refused with an error of this name. */
export async function expectRefusal(promise: Promise<unknown>, errorName: string): Promise<void> {
  const outcome = await promise.then(
    () => "no refusal",
    (error: unknown) => (error instanceof Error ? error.name : typeof error),
  );
  expectEqual(outcome, errorName, "the refusal");
}

/** Waits until the condition holds; fails in words when it does not within two seconds. */
export async function expectSoon(condition: () => boolean, what: string): Promise<void> {
  const end = Date.now() + 2000;
  while (!condition()) {
    if (Date.now() > end) throw new Error(`This did not happen within two seconds: ${what}`);
    await pause(10);
  }
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

function asText(value: unknown): string {
  return value === undefined ? "undefined" : JSON.stringify(value);
}
