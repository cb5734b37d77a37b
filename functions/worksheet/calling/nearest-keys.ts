/** The form in which keys are compared: case and spacing do not count. */
export function plainKey(text: string): string {
  return text.trim().replace(/\s+/g, " ").toLowerCase();
}

/** The keys most like a text that is none of them, best first. */
export function nearestKeys(text: string, keys: readonly string[], howMany = 3): readonly string[] {
  const sought = letterPairs(text);
  return keys
    .map((key) => ({ key, likeness: likeness(sought, letterPairs(key)) }))
    .sort((a, b) => b.likeness - a.likeness)
    .slice(0, howMany)
    .map(({ key }) => key);
}

/** Shared pairs of neighbouring letters: forgiving of slips and of words in another order. */
function likeness(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  let shared = 0;
  for (const pair of a) if (b.has(pair)) shared += 1;
  return (2 * shared) / (a.size + b.size);
}

function letterPairs(text: string): ReadonlySet<string> {
  // A long text cannot be a slip for a key; its beginning is enough to compare.
  const padded = ` ${plainKey(text.slice(0, 100))} `;
  return new Set(Array.from({ length: padded.length - 1 }, (_, i) => padded.slice(i, i + 2)));
}
