import { useDocument, useView } from "../stores/index.ts";
import { ActionButton } from "./ActionButton.tsx";
import { actions } from "./actions.ts";
import { StageStrip } from "./StageStrip.tsx";

/** Name of the tray, the strip of stages, and what takes changes back. */
export function TitleBar() {
  const title = useDocument((state) => state.project.title);
  const { canUndo, canRedo } = {
    canUndo: useDocument((state) => state.history.past.length > 0),
    canRedo: useDocument((state) => state.history.future.length > 0),
  };
  return (
    <header className="title-bar">
      <button
        type="button"
        className="plain tray-name"
        data-testid="menu"
        onClick={() => useView.getState().setOverlay("menu")}
      >
        <h1>{title}</h1>
      </button>
      <StageStrip />
      <div className="title-actions">
        <ActionButton action={actions.undo} isEnabled={canUndo} />
        <ActionButton action={actions.redo} isEnabled={canRedo} />
        <ActionButton action={actions.keys} isEnabled />
      </div>
    </header>
  );
}
