/** Throws when one of our own assumptions is wrong; never used on what a builder typed. */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Assumption failed: ${message}`);
}

/** Closes a switch over a union: the compiler shows the case that was forgotten. */
export function assertNever(value: never): never {
  throw new Error(`Unexpected value: ${JSON.stringify(value)}`);
}

/** The item at an index that is known to be inside the list; throws for our own mistakes. */
export function at<T>(list: readonly T[], index: number): T {
  const item = list[index < 0 ? list.length + index : index];
  if (item === undefined) throw new Error(`Assumption failed: index ${index} of ${list.length}`);
  return item;
}
