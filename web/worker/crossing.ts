/**
 * Plain data on its way from the worker to the page. Whatever crossed the last time and is still the very same object
 * is told by its place, and not copied again: the page then has what has not changed as the object it has already, and
 * nobody compares a tray point by point.
 */
export type Crossing<Whole> = { readonly [Key in keyof Whole]: Crossed };

type Crossed =
  | { readonly kind: "same" }
  | { readonly kind: "new"; readonly value: unknown }
  | { readonly kind: "list"; readonly entries: readonly (PlaceBefore | NewEntry)[] };

/** The place in the list that crossed before. */
type PlaceBefore = number;
interface NewEntry {
  readonly value: unknown;
}

/** The worker's end; it remembers what went over, and every crossing must arrive at one `newArrival`, in order. */
export function newDeparture<Whole extends object>(): (now: Whole) => Crossing<Whole> {
  let before: Partial<Whole> = {};
  return (now) => {
    const crossing = mapFields(now, (value, key) => crossed(before[key], value));
    before = now;
    return crossing as Crossing<Whole>;
  };
}

/** The page's end; what has not changed is the object of before, a list without a change too. */
export function newArrival<Whole extends object>(): (crossing: Crossing<Whole>) => Whole {
  let before: Partial<Whole> = {};
  return (crossing) => {
    const arrived = mapFields(crossing, (value, key) => taken(before[key], value));
    before = arrived as Partial<Whole>;
    return arrived as Whole;
  };
}

function mapFields<Whole extends object>(
  whole: Whole,
  map: (value: Whole[keyof Whole], key: keyof Whole) => unknown,
): object {
  const keys = Object.keys(whole) as (keyof Whole)[];
  return Object.fromEntries(keys.map((key) => [key, map(whole[key], key)]));
}

function crossed(before: unknown, now: unknown): Crossed {
  if (before !== undefined && before === now) return { kind: "same" };
  if (!isList(before) || !isList(now)) return { kind: "new", value: now };
  const places = new Map(before.map((entry, place) => [entry, place]));
  const entries = now.map((entry) => places.get(entry) ?? { value: entry });
  const isSame = now.length === before.length && entries.every((entry, place) => entry === place);
  return isSame ? { kind: "same" } : { kind: "list", entries };
}

function taken(before: unknown, now: Crossed): unknown {
  if (now.kind === "same") return before;
  if (now.kind === "new") return now.value;
  const known = isList(before) ? before : [];
  return now.entries.map((entry) => (typeof entry === "number" ? known[entry] : entry.value));
}

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);
