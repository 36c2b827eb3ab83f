export { describeDrawing, describeSelection } from "./describe-selection.ts";
export { nameOfSelection } from "./name-of-selection.ts";
