import type { Design } from "../../../core/design.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { type Selection, useDesign, useView } from "../../stores/index.ts";
import { BendTable } from "./BendTable.tsx";
import { EdgeTable } from "./EdgeTable.tsx";
import { MarkingOut } from "./MarkingOut.tsx";
import { PartDrawing } from "./PartDrawing.tsx";
import { PartHeading } from "./PartHeading.tsx";
import { PartList } from "./PartList.tsx";

/** Every part laid flat: one large with its lengths, bends, strips and marking-out tables. */
export function SheetsStage() {
  const design = useDesign((state) => state.design);
  const selection = useView((view) => view.selection);
  if (design === undefined) return null;
  const part = chosenPart(design, selection);
  if (part === undefined)
    return (
      <p className="empty">
        Nothing is laid flat yet. Draw a section and give it a profile; its flat part comes here.
      </p>
    );
  return (
    <div className="two-panes">
      <PartList design={design} chosenId={part.id} />
      <article className="pane" key={part.id} data-testid="part-view" data-part={part.id}>
        <PartHeading part={part} design={design} />
        <PartDrawing part={part} design={design} />
        <div className="columns">
          <EdgeTable part={part} />
          <BendTable part={part} />
        </div>
        <MarkingOut part={part} design={design} />
      </article>
    </div>
  );
}

/** The part that is chosen, else one of the chosen item, else the first. */
export function chosenPart(design: Design, selection: Selection | undefined): Part | undefined {
  const { parts } = design;
  const byPart = selection?.kind === "part" ? parts.find((part) => part.id === selection.partId) : undefined;
  const byItem =
    selection?.kind === "item" ? parts.find((part) => part.itemId === selection.itemId) : undefined;
  return byPart ?? byItem ?? parts[0];
}
