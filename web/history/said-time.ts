/** A moment as the builder's language says it: `25 Nov 2026, 14:20`. */
export const saidTime = (atMs: number): string =>
  new Date(atMs).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
