import { useState } from "react";
import type { Design } from "../../../core/design.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { FoldedPlate, PlatePart } from "../../../core/plates/index.ts";
import { TwistFigures } from "../../drawings/index.ts";
import { HelpMark } from "../../help/index.ts";
import { Look } from "../../look3d/index.ts";
import { type Selection, useDesign, useView } from "../../stores/index.ts";
import { EmptyPlace } from "../settings/index.ts";
import { BendSettings } from "./BendSettings.tsx";
import { BendTable } from "./BendTable.tsx";
import { CutTable } from "./CutTable.tsx";
import { EdgeTable } from "./EdgeTable.tsx";
import { JointTable } from "./JointTable.tsx";
import { MarkingOut } from "./MarkingOut.tsx";
import { PartDrawing } from "./PartDrawing.tsx";
import { PartHeading } from "./PartHeading.tsx";
import { PartList } from "./PartList.tsx";
import { PlateView } from "./PlateView.tsx";

/** Every part laid flat: one large with its lengths, bends, strips and marking-out tables. */
export function SheetsStage() {
  const design = useDesign((state) => state.design);
  const selection = useView((view) => view.selection);
  const partsShown = useView((view) => view.partsShown);
  if (design === undefined) return null;
  const plate = chosenPlate(design, selection);
  if (partsShown === "space")
    return (
      <div className="two-panes">
        <PartList design={design} chosenId={plate?.part.id ?? chosenPart(design, selection)?.id ?? ""} />
        <Look />
      </div>
    );
  if (plate)
    return (
      <div className="two-panes">
        <PartList design={design} chosenId={plate.part.id} />
        <PlateView {...plate} />
      </div>
    );
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
            <h3>
              <HelpMark term="twist">Twist</HelpMark>
            </h3>
            <TwistFigures twist={part.twist} />
          </section>
        ) : (
          <BendTable part={part} design={design} />
        )}
      </div>
      <BendSettings />
      <CutTable part={part} design={design} />
      <JointTable part={part} design={design} />
      <MarkingOut design={design} strips={strips} strip={strip} table={table} onChoose={wantStrip} />
    </article>
  );
}

/** The plate that is chosen, on the hand that is chosen. */
function chosenPlate(
  { plates }: Design,
  selection: Selection | undefined,
): { readonly plate: FoldedPlate; readonly part: PlatePart } | undefined {
  for (const plate of plates) {
    const isChosen = selection?.kind === "item" && selection.itemId === plate.itemId;
    const part = isChosen
      ? plate.parts[0]
      : plate.parts.find(({ id }) => selection?.kind === "part" && id === selection.partId);
    if (part) return { plate, part };
  }
  return undefined;
}

/** The part that is chosen, else one of the chosen item, else the first. */
export function chosenPart(design: Design, selection: Selection | undefined): Part | undefined {
  const { parts } = design;
  const byPart = selection?.kind === "part" ? parts.find((part) => part.id === selection.partId) : undefined;
  const byItem =
    selection?.kind === "item" ? parts.find((part) => part.itemId === selection.itemId) : undefined;
  return byPart ?? byItem ?? parts[0];
}
