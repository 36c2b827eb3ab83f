import { formatMm } from "../../../core/foundation/index.ts";
import { coreOf, type Fence, type Section, type Transition } from "../../../core/project/index.ts";
import { useDocument } from "../../stores/index.ts";
import { LabelledCell } from "./LabelledCell.tsx";

interface CoreFieldsProps {
  readonly item: Section | Fence | Transition;
  readonly onChange: (core: Section["core"]) => void;
}

/** The foam thickness of one sheet; empty is the tray's own. */
export function CoreFields({ item, onChange }: CoreFieldsProps) {
  const project = useDocument((state) => state.project);
  const { foamId } = coreOf(project, item);
  return (
    <LabelledCell
      label="Foam thickness"
      unit="mm"
      value={item.core?.thicknessMm}
      hint={formatMm(project.core.thicknessMm)}
      testId="foam-thickness"
      onClear={() => onChange(undefined)}
      onChange={(thicknessMm) => onChange({ foamId, thicknessMm })}
    />
  );
}
