/** Numbers from 0 to 1 that follow from the text alone: the same yard is drafted the same way on every day. */
export function seededRandom(text: string): () => number {
  let state = 0x811c9dc5;
  for (let place = 0; place < text.length; place += 1) state = Math.imul(state ^ text.charCodeAt(place), 0x01000193);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function shuffled<Item>(items: readonly Item[], random: () => number): readonly Item[] {
  return items
    .map((item) => ({ item, order: random() }))
    .sort((one, other) => one.order - other.order)
    .map(({ item }) => item);
}
