export { Board } from "./Board.tsx";
export { ChosenPanel } from "./ChosenPanel.tsx";
export { type Paint, usePaint } from "./paint.ts";
