export { STARTERS, starterOf, usualNumbers } from "./starters.ts";
export {
  type Starter,
  type StarterName,
  StarterNames,
  type StarterNumber,
  type StarterRange,
  type StarterStart,
  type TypedNumbers,
} from "./types.ts";
