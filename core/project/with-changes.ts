/** Changes to some fields of T; `undefined` takes an optional field away. */
type ChangesOf<T> = { readonly [Key in keyof T]?: T[Key] | undefined };

/**
 * The thing with its changes; `undefined` takes a field away when it is one of `optional`, and leaves any other
 * as it is. The same thing when nothing changes.
 */
export function withChanges<T extends object>(
  thing: T,
  changes: ChangesOf<T>,
  optional: readonly (keyof T & string)[],
): T {
  const before = new Map<string, unknown>(Object.entries(thing));
  const after = new Map(before);
  for (const [key, value] of Object.entries(changes)) {
    if (value !== undefined) after.set(key, value);
    else if (optional.some((name) => name === key)) after.delete(key);
  }
  const isSame =
    after.size === before.size && [...after].every(([key, value]) => Object.is(value, before.get(key)));
  // The type checker cannot follow single fields through the map; each value comes from T or from its changes.
  return isSame ? thing : (Object.fromEntries(after) as T);
}
