/** Day and time of day as this device writes them. */
export const wordDate = (atMs: number): string =>
  new Date(atMs).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
