export { ChoosingBox } from "./ChoosingBox.tsx";
export { copyChosen, cutChosen, pasteCopied, pasteHanded } from "./clipboard.ts";
export { countGrips } from "./count-grips.ts";
export { EditPrompt } from "./EditPrompt.tsx";
export { EditRow } from "./EditRow.tsx";
export {
  beginTask,
  chooseAll,
  chosenGrips,
  chosenWholes,
  duplicateChosen,
  takeTask,
} from "./edit-deeds-of.ts";
export { type EditTask, useEdit } from "./edit-store.ts";
export { planEdit } from "./plan-edit.ts";
export { SeveralSwitch } from "./SeveralSwitch.tsx";
export { joinChosen, planJoin, planSplit, splitChosen } from "./split-and-join.ts";
