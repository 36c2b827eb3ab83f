/** A list with a change made to each entry; the list itself where nothing changed. */
export function mapKept<T>(list: readonly T[], change: (entry: T) => T): readonly T[] {
  const changed = list.map(change);
  return changed.some((entry, index) => entry !== list[index]) ? changed : list;
}
