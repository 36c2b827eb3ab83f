/**
 * The value now, in which everything that says the same as its counterpart of before is that very object: what has
 * not changed can then be told by identity. Plain data only; a function equals itself alone.
 */
export function keepEqual<T>(before: unknown, now: T): T;
export function keepEqual(before: unknown, now: unknown): unknown {
  if (Object.is(before, now)) return before;
  if (Array.isArray(now)) return Array.isArray(before) ? keepInList(before, now) : now;
  if (isRecord(now) && isRecord(before)) return keepInRecord(before, now);
  return now;
}

function keepInList(before: readonly unknown[], now: readonly unknown[]): readonly unknown[] {
  const kept = now.map((entry, i) => keepEqual(before[i], entry));
  const isSame = kept.length === before.length && kept.every((entry, i) => Object.is(entry, before[i]));
  return isSame ? before : kept;
}

type Fields = Readonly<Record<string, unknown>>;

function keepInRecord(before: Fields, now: Fields): Fields {
  const keys = Object.keys(now);
  const kept = Object.fromEntries(keys.map((key) => [key, keepEqual(before[key], now[key])]));
  const isSame =
    keys.length === Object.keys(before).length &&
    keys.every((key) => key in before && Object.is(kept[key], before[key]));
  return isSame ? before : kept;
}

/** A record as JSON knows it; what is of any other make, such as a map or an array of numbers, stays as it is. */
const isRecord = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && Object.getPrototypeOf(value) === Object.prototype;
