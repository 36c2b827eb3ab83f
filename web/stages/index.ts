export { type StageEntry, stages } from "./stages.ts";
