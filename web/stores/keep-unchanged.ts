import type { Design } from "../../core/design.ts";

/**
 * A new design in which everything that equals its counterpart in the one before is that very object, so that
 * only what has changed is drawn again.
 */
export function keepUnchanged(before: Design | undefined, now: Design): Design {
  if (before === undefined) return now;
  return {
    ...now,
    plates: keepEntries(before.plates, now.plates),
    sheets: keepEntries(before.sheets, now.sheets),
    joints: keepEntries(before.joints, now.joints),
    jointOffers: keepEntries(before.jointOffers, now.jointOffers),
    parts: keepEntries(before.parts, now.parts),
    seams: keepEntries(before.seams, now.seams),
    strips: keepEntries(before.strips, now.strips),
    marking: keepEntries(before.marking, now.marking),
    jig: isEqual(before.jig, now.jig) ? before.jig : now.jig,
    glueUp: keepEntries(before.glueUp, now.glueUp),
    totals: isEqual(before.totals, now.totals) ? before.totals : now.totals,
    problems: keepEntries(before.problems, now.problems),
  };
}

/** The list with its unchanged entries kept, or the whole list of before where nothing has changed. */
function keepEntries<Entry>(before: readonly Entry[], now: readonly Entry[]): readonly Entry[] {
  const kept = now.map((entry, index) => {
    const other = before[index];
    return other !== undefined && isEqual(other, entry) ? other : entry;
  });
  const isWhole = before.length === kept.length && kept.every((entry, index) => entry === before[index]);
  return isWhole ? before : kept;
}

/**
 * Whether two pieces of plain data say the same. It looks at every point of the tray at every move of the hand, so
 * lists are walked by index and no lists of keys are made.
 */
function isEqual(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (isList(one)) return isList(other) && areEqualLists(one, other);
  if (!isRecord(one) || !isRecord(other) || isList(other)) return false;
  for (const key in one) if (!(key in other) || !isEqual(one[key], other[key])) return false;
  for (const key in other) if (!(key in one)) return false;
  return true;
}

function areEqualLists(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i += 1) if (!isEqual(one[i], other[i])) return false;
  return true;
}

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;
