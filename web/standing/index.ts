export { chosenThing } from "./chosen-thing.ts";
export { HiddenCount } from "./HiddenCount.tsx";
export { RefusalLine } from "./RefusalLine.tsx";
export { StandingLine } from "./StandingLine.tsx";
export { StandingSwitches } from "./StandingSwitches.tsx";
export {
  canStandOtherwise,
  hideChosen,
  isAnythingHidden,
  lockChosen,
  setStanding,
  showEverything,
} from "./set-standing.ts";
