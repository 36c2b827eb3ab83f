import { ChevronDown } from "lucide-react";
import { useDocument } from "../stores/index.ts";
import { ActionButton } from "./ActionButton.tsx";
import { actions } from "./actions.ts";
import { MENU_ID, Menu } from "./Menu.tsx";
import { StageStrip } from "./StageStrip.tsx";

/** Name of the tray with its menu, the strip of stages, and what takes changes back. */
export function TitleBar() {
  const title = useDocument((state) => state.project.title);
  const canUndo = useDocument((state) => state.history.past.length > 0);
  const canRedo = useDocument((state) => state.history.future.length > 0);
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
        <ActionButton action={actions.undo} isEnabled={canUndo} />
        <ActionButton action={actions.redo} isEnabled={canRedo} />
        <ActionButton action={actions.keys} isEnabled />
      </div>
    </header>
  );
}
