/** A single value of a document, or a list of such. */
export type PlainValue = string | number | boolean | readonly (string | number | boolean)[];

/** A value that differs between two pieces of plain data; undefined where one of them has none. */
export interface ValueChange {
  /** The names of fields on the way to it; an entry of a list goes by its id, else by its place in the list. */
  readonly path: readonly string[];
  readonly from: PlainValue | undefined;
  readonly to: PlainValue | undefined;
}

/**
 * Every single value in which two pieces of plain data differ, in the order of their fields. Entries of a list are the
 * same ones where their ids are; where the ids that both lists have stand in another order, that is a change of `order`.
 */
export function valueChanges(
  before: unknown,
  after: unknown,
  path: readonly string[] = [],
): readonly ValueChange[] {
  if (isSingle(before) && isSingle(after))
    return isSame(before, after) ? [] : [{ path, from: before, to: after }];
  const [from, to] = [entriesOf(before), entriesOf(after)];
  // A single value in place of a group: the value goes or comes by itself.
  const replaced = [
    ...(isSingle(before) && before !== undefined ? [{ path, from: before, to: undefined }] : []),
    ...(isSingle(after) && after !== undefined ? [{ path, from: undefined, to: after }] : []),
  ];
  const names = [...new Set([...from.keys(), ...to.keys()])];
  return [
    ...replaced,
    ...names.flatMap((name) => valueChanges(from.get(name), to.get(name), [...path, name])),
    ...(Array.isArray(before) && Array.isArray(after)
      ? orderChanges([...from.keys()], [...to.keys()], path)
      : []),
  ];
}

/** What lies in a piece of plain data at a path of `valueChanges`. */
export const valueAt = (data: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((inside, name) => entriesOf(inside).get(name), data);

function orderChanges(
  before: readonly string[],
  after: readonly string[],
  path: readonly string[],
): readonly ValueChange[] {
  const from = before.filter((name) => after.includes(name));
  const to = after.filter((name) => before.includes(name));
  return isSame(from, to) ? [] : [{ path: [...path, "order"], from, to }];
}

function entriesOf(data: unknown): ReadonlyMap<string, unknown> {
  if (isSingle(data) || typeof data !== "object" || data === null) return new Map();
  if (!Array.isArray(data)) return new Map(Object.entries(data));
  return new Map(data.map((entry: unknown, index) => [idOf(entry) ?? String(index), entry]));
}

const idOf = (entry: unknown): string | undefined =>
  typeof entry === "object" && entry !== null && "id" in entry && typeof entry.id === "string"
    ? entry.id
    : undefined;

function isSingle(data: unknown): data is PlainValue | undefined {
  if (Array.isArray(data)) return data.length > 0 && data.every((entry) => typeof entry !== "object");
  return typeof data !== "object";
}

function isSame(one: PlainValue | undefined, other: PlainValue | undefined): boolean {
  if (typeof one !== "object" || typeof other !== "object") return Object.is(one, other);
  return one.length === other.length && one.every((entry, index) => Object.is(entry, other[index]));
}
