export { StepPicture } from "./StepPicture.tsx";
