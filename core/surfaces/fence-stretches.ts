/** A fence may miss the sheet by this much of its length at either end: less than a saw cut. */
export const END_GRACE_MM = 0.5;

/** Step of the first look along a fence for places where the sheet above changes; less than any sheet's width. */
const LOOK_STEP_MM = 5;

/** How near the border between two stretches is found; a micrometre, so that nothing is seen of it. */
const BORDER_MM = 1e-6;

/** A stretch of a fence's line under one sheet, or under none. */
export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly sheetId: string | undefined;
}

/** A line divided where the sheet above it changes, from its start to its end; the very ends count as what is beside them. */
export function stretchesAlong(
  lengthMm: number,
  sheetAt: (alongMm: number) => string | undefined,
): readonly [Stretch, ...Stretch[]] {
  const graceMm = Math.min(END_GRACE_MM, lengthMm / 4);
  const keyAt = (s: number) => sheetAt(Math.min(Math.max(s, graceMm), lengthMm - graceMm));
  const steps = Math.max(2, Math.ceil(lengthMm / LOOK_STEP_MM));
  const closed: Stretch[] = [];
  let open = { fromMm: 0, sheetId: keyAt(0) };
  for (let i = 1; i <= steps; i++) {
    const sheetId = keyAt((lengthMm * i) / steps);
    if (sheetId === open.sheetId) continue;
    const toMm = borderBetween((lengthMm * (i - 1)) / steps, (lengthMm * i) / steps, keyAt);
    closed.push({ ...open, toMm });
    open = { fromMm: toMm, sheetId };
  }
  const last = { ...open, toMm: lengthMm };
  const [first, ...rest] = closed;
  return first ? [first, ...rest, last] : [last];
}

function borderBetween(from: number, to: number, keyAt: (s: number) => string | undefined): number {
  const key = keyAt(from);
  let [a, b] = [from, to];
  while (b - a > BORDER_MM) {
    const middle = (a + b) / 2;
    if (keyAt(middle) === key) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
