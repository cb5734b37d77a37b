/** The items by their keys, in the order they came; each is looked at once, however many keys there are. */
export function grouped<Item, Key>(items: Iterable<Item>, keysOf: (item: Item) => Iterable<Key>): ReadonlyMap<Key, readonly Item[]> {
  const groups = new Map<Key, Item[]>();
  for (const item of items)
    for (const key of keysOf(item)) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [item]);
      else group.push(item);
    }
  return groups;
}
