import { plainKey } from "./typed-words.ts";

/**
 * The keys most like a text that is none of them, best first. A list of keys is taken apart once, however many texts are
 * held against it: a whole column may be misspelt.
 */
export function nearestKeys(text: string, keys: readonly string[], howMany = 3): readonly string[] {
  const { placesOf, pairCounts, likeness } = letterPairsOf(keys);
  const sought = letterPairs(text);
  likeness.fill(0);
  for (const pair of sought) for (const place of placesOf.get(pair) ?? NOWHERE) likeness[place]! += 1;
  // Shared pairs of neighboring letters: forgiving of slips and of words in another order.
  for (let place = 0; place < keys.length; place += 1) likeness[place]! /= sought.size + pairCounts[place]!;
  const best: string[] = [];
  while (best.length < Math.min(howMany, keys.length)) {
    let nearest = 0;
    for (let place = 1; place < keys.length; place += 1) if (likeness[place]! > likeness[nearest]!) nearest = place;
    best.push(keys[nearest]!);
    likeness[nearest] = -1;
  }
  return best;
}

interface KeysApart {
  /** The keys that hold a pair of letters, by their place. */
  readonly placesOf: ReadonlyMap<number, readonly number[]>;
  readonly pairCounts: readonly number[];
  /** Filled anew for each text. */
  readonly likeness: Float64Array;
}

/** How many values a unit of text can have. */
const LETTERS = 0x10000;

const NOWHERE: readonly number[] = [];
const takenApart = new WeakMap<readonly string[], KeysApart>();

function letterPairsOf(keys: readonly string[]): KeysApart {
  const known = takenApart.get(keys);
  if (known !== undefined) return known;
  const placesOf = new Map<number, number[]>();
  const pairCounts = keys.map((key, place) => {
    const pairs = letterPairs(key);
    for (const pair of pairs) {
      const places = placesOf.get(pair);
      if (places === undefined) placesOf.set(pair, [place]);
      else places.push(place);
    }
    return pairs.size;
  });
  const apart = { placesOf, pairCounts, likeness: new Float64Array(keys.length) };
  takenApart.set(keys, apart);
  return apart;
}

/** Each pair as a number: a whole column of texts would leave a million short strings behind. */
function letterPairs(text: string): ReadonlySet<number> {
  // A long text cannot be a slip for a key; its beginning is enough to compare.
  const padded = ` ${plainKey(text.slice(0, 100))} `;
  const pairs = new Set<number>();
  for (let place = 1; place < padded.length; place += 1) pairs.add(padded.charCodeAt(place - 1) * LETTERS + padded.charCodeAt(place));
  return pairs;
}
