export { Board } from "./Board.tsx";
export { ChosenPanel } from "./ChosenPanel.tsx";
