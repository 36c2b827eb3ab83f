export { ChosenAnnounced } from "./ChosenAnnounced.tsx";
export { DescribedDialog } from "./DescribedDialog.tsx";
