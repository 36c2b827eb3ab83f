import { X } from "lucide-react";
import type { CSSProperties } from "react";
import { Splitter } from "../controls/index.ts";
import { useDocument } from "../stores/index.ts";
import { ComparisonDialog } from "./ComparisonDialog.tsx";
import { useHistoryView } from "./history-view.ts";
import { SnapshotList } from "./SnapshotList.tsx";
import { StepList } from "./StepList.tsx";
import "./history.css";

/** Beside the work: every step that led to the tray as it stands, to be gone back to. */
export function HistoryPanel() {
  const { widthPx, show, setWidth } = useHistoryView();
  const width: CSSProperties & Record<`--${string}`, string> = { "--history-width": `${widthPx}px` };
  return (
    <aside className="history-place" aria-label="Steps">
      <Splitter
        label="Width of the steps"
        runs="upright"
        sizePx={widthPx}
        leastPx={220}
        mostPx={560}
        grows="backward"
        onChange={setWidth}
      />
      <div className="history" style={width} data-testid="history">
        <header className="history-head">
          <h2 className="caption">Steps</h2>
          <StepCount />
          <button type="button" className="plain" data-testid="history-close" onClick={() => show(false)}>
            <X aria-hidden />
            Close
          </button>
        </header>
        <StepList />
        <SnapshotList />
        <ComparisonDialog />
      </div>
    </aside>
  );
}

function StepCount() {
  const done = useDocument((state) => state.history.at);
  const takenBack = useDocument((state) => state.history.steps.length - 1 - state.history.at);
  const isReadOnly = useDocument((state) => state.isReadOnly);
  const changes = done === 1 ? "1 change" : `${done} changes`;
  return (
    <p className="pencil" role="status" data-testid="step-count">
      {takenBack > 0 ? `${changes}, ${takenBack} taken back` : changes}
      {isReadOnly ? "; only the other tab can go back" : ""}
    </p>
  );
}
