import { type Command, copiesOf, cuttingOf, type Grip, gripsOfCopies } from "../../core/project/index.ts";
import { drawnSelection, hear, sceneFor } from "../hand/index.ts";
import { lengthsIn } from "../lengths/index.ts";
import { useDocument, usePreferences, useView } from "../stores/index.ts";
import { gripsOf, selectGrips } from "../tools/index.ts";
import { type EditTask, type Makes, useEdit } from "./edit-store.ts";
import { middleOf } from "./middle-of.ts";
import { planEdit } from "./plan-edit.ts";

/** What is chosen on the board now, one by one. */
export const chosenGrips = (): readonly Grip[] => gripsOf(drawnSelection());

export const chosenWholes = (): readonly Grip[] => chosenGrips().filter(({ nodeId }) => nodeId === undefined);

/** How far a copy is set down beside what it is a copy of, mm. */
const BESIDE_MM = 20;

/** Begins to ask for a task's numbers, with what lies nearest at hand filled in. */
export function beginTask(kind: EditTask["kind"]): void {
  useView.getState().setPhoneView("drawing");
  useEdit.getState().begin(startOf(kind));
}

function startOf(kind: EditTask["kind"]): EditTask {
  const { project } = useDocument.getState();
  const grips = chosenGrips();
  const [x, y] = middleOf(sceneFor(project), grips);
  switch (kind) {
    case "move":
      return { kind, x: 0, y: 0, z: 0, profiles: "stay" };
    case "turn":
      return { kind, degrees: 0, x, y };
    case "scale":
      return { kind, percent: 100, x, y };
    case "mirror":
      return { kind, across: "lengthwise", atMm: y, makes: "copy" };
    case "repeat":
      return { kind, count: 2, x: 0, y: 100 };
    case "parallel": {
      const isFence = grips.some(
        ({ line }) =>
          line.of === "item" && project.items.find(({ id }) => id === line.itemId)?.kind === "fence",
      );
      return { kind, distanceMm: 20, makes: isFence ? "copy" : "itself" };
    }
  }
}

/** Begins to ask where to mirror: across the middle of what is chosen, or at the hairline's station. */
export function beginMirror(across: "lengthwise" | "station", makes: Makes): void {
  const [, y] = middleOf(sceneFor(useDocument.getState().project), chosenGrips());
  const atMm = across === "station" ? useView.getState().hairlineXMm : y;
  useEdit.getState().begin({ kind: "mirror", across, atMm, makes });
}

/** Does what is asked for, if it can be done, as one step back. */
export function takeTask(): void {
  const { task, leave } = useEdit.getState();
  if (!task) return;
  const { project } = useDocument.getState();
  const planned = planEdit(project, chosenGrips(), task, lengthsIn(usePreferences.getState().units));
  if (!planned.ok) return;
  doAll(planned.commands);
  useView.getState().select(selectGrips(planned.chosen));
  leave();
}

/** Chooses everything that is drawn. */
export const chooseAll = (): void => hear({ kind: "choose-all" });

/** Sets a copy beside what is chosen, and chooses it. */
export function duplicateChosen(): void {
  const { project } = useDocument.getState();
  const byMm = { x: BESIDE_MM, y: BESIDE_MM, z: 0 };
  const copies = copiesOf(project, cuttingOf(project, chosenWholes()), { kind: "move", byMm });
  doAll([{ kind: "add-copies", copies }]);
  useView.getState().select(selectGrips(gripsOfCopies(copies)));
}

/** Several commands as one step back. */
export function doAll(commands: readonly Command[]): void {
  const { dispatchInGesture, endGesture } = useDocument.getState();
  for (const command of commands) dispatchInGesture(command);
  endGesture();
}
