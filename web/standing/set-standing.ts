import { hiddenThings, type Standing, standingOf, type ThingRef } from "../../core/project/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { chosenThing } from "./chosen-thing.ts";

/** Locks, unlocks, hides or shows things; what no longer stands in the way of an edit is not spoken of any more. */
export function setStanding(things: readonly ThingRef[], standing: Standing): void {
  const { dispatch, putRefusalsAway } = useDocument.getState();
  dispatch({ kind: "set-standing", things, standing });
  putRefusalsAway();
}

/** Locks what is chosen, or unlocks it where it is locked. */
export function lockChosen(): void {
  const thing = chosenNow();
  if (!thing) return;
  const { locked } = standingOf(useDocument.getState().project, thing);
  setStanding([thing], locked ? "unlocked" : "locked");
}

/** Hides what is chosen, or shows it where it is hidden; what has been hidden is let go of. */
export function hideChosen(): void {
  const thing = chosenNow();
  if (!thing) return;
  const { hidden } = standingOf(useDocument.getState().project, thing);
  setStanding([thing], hidden ? "shown" : "hidden");
  if (!hidden) useView.getState().select(undefined);
}

/** Shows everything that is hidden, as one step. */
export function showEverything(): void {
  const hidden = hiddenThings(useDocument.getState().project);
  if (hidden.length > 0) setStanding(hidden, "shown");
}

/** Whether something is chosen that can be locked and hidden. */
export const canStandOtherwise = (): boolean => chosenNow() !== undefined;

/** Whether anything is hidden. */
export const isAnythingHidden = (): boolean => hiddenThings(useDocument.getState().project).length > 0;

const chosenNow = (): ThingRef | undefined => chosenThing(useView.getState().selection);
