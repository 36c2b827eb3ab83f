import { useState } from "react";
import type { Design } from "../../../core/design.ts";
import type { Part } from "../../../core/patterns/index.ts";
import { TwistFigures } from "../../drawings/index.ts";
import { type Selection, useDesign, useView } from "../../stores/index.ts";
import { EmptyPlace } from "../settings/index.ts";
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
      <EmptyPlace words="Nothing is laid flat yet. Draw a section and give it a profile; its flat part comes here." />
    );
  return (
    <div className="two-panes">
      <PartList design={design} chosenId={part.id} />
      <PartView key={part.id} part={part} design={design} />
    </div>
  );
}

/** One part: its drawing, and the tables that belong to it. */
function PartView({ part, design }: { readonly part: Part; readonly design: Design }) {
  const [edgeId, pointAtEdge] = useState<string>();
  const [wantedId, wantStrip] = useState<string>();
  const strips = design.strips.filter((strip) => strip.partId === part.id);
  const strip = strips.find(({ id }) => id === wantedId) ?? strips[0];
  const table = design.marking.find(({ stripId }) => stripId === strip?.id);
  return (
    <article className="pane" data-testid="part-view" data-part={part.id}>
      <PartHeading part={part} design={design} />
      <PartDrawing part={part} design={design} edgeId={edgeId} table={table} />
      <div className="columns">
        <EdgeTable part={part} onPoint={pointAtEdge} />
        {part.twist ? (
          <section aria-label="Twist">
            <h3>Twist</h3>
            <TwistFigures twist={part.twist} />
          </section>
        ) : (
          <BendTable part={part} />
        )}
      </div>
      <MarkingOut design={design} strips={strips} strip={strip} table={table} onChoose={wantStrip} />
    </article>
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
