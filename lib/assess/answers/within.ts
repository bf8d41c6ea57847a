/** What a map holds under this key; a fresh one is put there where it holds none. */
export function within<Key, Value>(map: Map<Key, Value>, key: Key, fresh: () => Value): Value {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = fresh();
  map.set(key, made);
  return made;
}
