import { coreOf, type Fence, type Section, type Transition } from "../../../core/project/index.ts";
import { Select, useLengths } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";
import { LabelledCell } from "./LabelledCell.tsx";

interface CoreFieldsProps {
  readonly item: Section | Fence | Transition;
  readonly onChange: (core: Section["core"]) => void;
}

/** The foam of one sheet and its thickness; empty is the tray's own. */
export function CoreFields({ item, onChange }: CoreFieldsProps) {
  const { showFine } = useLengths();
  const project = useDocument((state) => state.project);
  const { foamId, thicknessMm: ownMm } = coreOf(project, item);
  const { foams } = project.materials;
  const choose = (chosenId: string) =>
    onChange(chosenId === "" ? undefined : { foamId: chosenId, thicknessMm: ownMm });
  return (
    <>
      <Select
        label="Foam"
        value={item.core ? foamId : ""}
        options={[
          { value: "", word: "the tray's" },
          ...foams.map((foam) => ({ value: foam.id, word: foam.name })),
        ]}
        testId="foam-choice"
        onChange={choose}
      />
      <LabelledCell
        label="Foam thickness"
        kind="fine length"
        value={item.core?.thicknessMm}
        hint={showFine(project.core.thicknessMm)}
        testId="foam-thickness"
        onClear={() => onChange(undefined)}
        onChange={(thicknessMm) => onChange({ foamId, thicknessMm })}
      />
    </>
  );
}
