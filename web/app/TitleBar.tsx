import { ChevronDown } from "lucide-react";
import { nameOfRedo, nameOfUndo } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { ActionButton } from "./ActionButton.tsx";
import { actions } from "./actions.ts";
import { MENU_ID, Menu } from "./Menu.tsx";
import { StageStrip } from "./StageStrip.tsx";

/** Name of the tray with its menu, the strip of stages, and what takes changes back. */
export function TitleBar() {
  const title = useDocument((state) => state.project.title);
  const undone = useDocument((state) => nameOfUndo(state.history));
  const redone = useDocument((state) => nameOfRedo(state.history));
  return (
    <header className="title-bar">
      <button
        type="button"
        className="plain tray-name"
        data-testid="menu"
        popoverTarget={MENU_ID}
        title="New, open, save, and how this page looks"
      >
        <h1>{title.trim() === "" ? "Tray without a name" : title}</h1>
        <ChevronDown aria-hidden />
        <span className="visually-hidden">Menu</span>
      </button>
      <Menu />
      <StageStrip />
      <div className="title-actions">
        <ActionButton action={actions.undo} isEnabled={undone !== undefined} about={undone} />
        <ActionButton action={actions.redo} isEnabled={redone !== undefined} about={redone} />
        <ActionButton action={actions.steps} isEnabled />
        <ActionButton action={actions.keys} isEnabled />
      </div>
    </header>
  );
}
