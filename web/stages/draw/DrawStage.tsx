import { type ComponentType, Suspense } from "react";
import { Shelf } from "./Shelf.tsx";
import { ToolRail } from "./ToolRail.tsx";

// The board is written at the same time; until it is there its place is empty.
const boards = import.meta.glob<Record<string, ComponentType>>("../../board/index.ts", { eager: true });
const Board = Object.values(boards)[0]?.Board;
const ChosenPanel = Object.values(boards)[0]?.ChosenPanel;

/** Tools, drawing board, and the shelf of flat parts with what is chosen below it. */
export function DrawStage() {
  return (
    <div className="draw">
      <ToolRail />
      <div className="board-place" data-testid="board">
        <Suspense>{Board ? <Board /> : null}</Suspense>
      </div>
      <aside className="side">
        <Shelf />
        <section className="chosen" aria-label="What is chosen" data-testid="chosen">
          {ChosenPanel ? <ChosenPanel /> : null}
        </section>
      </aside>
    </div>
  );
}
