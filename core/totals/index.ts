export type { Totals } from "./types.ts";
