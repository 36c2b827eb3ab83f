import { wordPanelBar } from "../../../core/foundation/index.ts";
import { panelMake } from "../../../core/laminate/index.ts";
import type { Fence } from "../../../core/project/index.ts";
import { panelBar } from "../../../core/surfaces/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDesign, useDocument } from "../../stores/index.ts";
import { LabelledCell } from "./LabelledCell.tsx";
import { PanelPlies } from "./PanelPlies.tsx";

interface PanelFieldsProps {
  readonly fence: Fence;
  readonly onChange: (panel: Fence["panel"]) => void;
}

/** Whether a fence is cut from a panel that is laminated first: offered where it can be, else the reason. */
export function PanelFields({ fence, onChange }: PanelFieldsProps) {
  const { showFine } = useLengths();
  const project = useDocument((state) => state.project);
  const sheet = useDesign((state) =>
    state.design?.sheets.find((one) => one.kind === "fence" && one.itemId === fence.id),
  );
  const bar = sheet?.kind === "fence" ? panelBar(project, fence, sheet) : undefined;
  const { panel } = fence;
  const { reckonedMm } = panelMake(project, fence);
  return (
    <fieldset className="panel-fields" aria-label="Made of">
      <label className="tick">
        <input
          type="checkbox"
          checked={panel !== undefined}
          disabled={panel === undefined && bar !== undefined}
          data-testid="from-panel"
          onChange={(event) => onChange(event.currentTarget.checked ? {} : undefined)}
        />
        cut from a flat panel that is laminated on the bench first
      </label>
      {bar !== undefined && panel === undefined && (
        <p className="pencil" data-testid="no-panel">{`Not this one. ${wordPanelBar(bar)}`}</p>
      )}
      {panel !== undefined && (
        <>
          <LabelledCell
            label="Measured thickness of the cured panel"
            kind="fine length"
            value={panel.measuredMm}
            hint={showFine(reckonedMm)}
            testId="panel-measured"
            onClear={() => onChange(without(panel, "measuredMm"))}
            onChange={(measuredMm) => onChange({ ...panel, measuredMm })}
          />
          <PanelPlies
            plies={panel.plies}
            onChange={(plies) => onChange(plies ? { ...panel, plies } : without(panel, "plies"))}
          />
        </>
      )}
    </fieldset>
  );
}

type Panel = NonNullable<Fence["panel"]>;

const without = ({ plies, measuredMm }: Panel, field: keyof Panel): Panel => ({
  ...(field !== "plies" && plies !== undefined && { plies }),
  ...(field !== "measuredMm" && measuredMm !== undefined && { measuredMm }),
});
