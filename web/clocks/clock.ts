/** A span of work or waiting that was begun by hand: how long glue stays open, how long pins stay in. Times in ms since 1970. */
export interface Clock {
  /** What it counts: the same thing begun anew takes its place. */
  readonly id: string;
  readonly name: string;
  /** What to do when it rings. */
  readonly atEnd: string;
  readonly beganAtMs: number;
  readonly endsAtMs: number;
  /** Whether somebody has heard it ring. */
  readonly isHeard: boolean;
}

/** A span as it can be begun. */
export type Span = Pick<Clock, "id" | "name" | "atEnd"> & { readonly minutes: number };

export const begun = ({ id, name, atEnd, minutes }: Span, nowMs: number): Clock => ({
  id,
  name,
  atEnd,
  beganAtMs: nowMs,
  endsAtMs: nowMs + minutes * 60_000,
  isHeard: false,
});

export const rings = ({ endsAtMs, isHeard }: Clock, nowMs: number): boolean => nowMs >= endsAtMs && !isHeard;

/** The clocks with one more; the earliest to ring comes first. */
export const withClock = (clocks: readonly Clock[], clock: Clock): readonly Clock[] =>
  [...clocks.filter(({ id }) => id !== clock.id), clock].toSorted((a, b) => a.endsAtMs - b.endsAtMs);

/** What is left, or by how much it is over: "5 h 12 min", "23:40 min", "over by 2:05 min". */
export function wordLeft({ endsAtMs }: Clock, nowMs: number): string {
  const leftMs = endsAtMs - nowMs;
  // A second is only gone when all of it is.
  const seconds = leftMs >= 0 ? Math.ceil(leftMs / 1000) : Math.floor(-leftMs / 1000);
  return leftMs >= 0 ? wordSeconds(seconds) : `over by ${wordSeconds(seconds)}`;
}

function wordSeconds(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  if (minutes >= 60) return `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
  return `${minutes}:${String(seconds % 60).padStart(2, "0")} min`;
}
