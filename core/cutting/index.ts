export type { Seam, Strip } from "./types.ts";
