export { stages } from "./stages.ts";
