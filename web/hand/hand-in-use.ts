import { create } from "zustand";
import { gridIn, lengthsIn } from "../lengths/index.ts";
import { useDocument, usePreferences, useView } from "../stores/index.ts";
import { type Hand, type Sight, type ToolContext, type ToolEvent, takeUp } from "../tools/index.ts";
import { drawnHeight } from "./drawn-height.ts";
import { drawnSelection } from "./drawn-selection.ts";
import { sceneFor } from "./use-scene.ts";
import { wingEdgesInPlan } from "./wing-edges.ts";

/** The tool in hand with its state; another tool is taken up afresh as soon as the view names it. */
const useHeld = create<{ readonly hand: Hand }>()((set, get) => {
  useView.subscribe(({ tool }) => {
    if (get().hand.name !== tool) set({ hand: takeUp(tool) });
  });
  return { hand: takeUp(useView.getState().tool) };
});

/** Lets the tool in hand hear what the builder does, and carries out what it answers. */
export function hear(event: ToolEvent): void {
  const { hand, step } = useHeld.getState().hand.hear(event, contextNow());
  carryOut(step);
  useHeld.setState({ hand });
}

/** What the tool in hand shows. */
export const sightNow = (): Sight => useHeld.getState().hand.sight(contextNow());

/** What the tool in hand shows, again whenever anything that it looks at has changed. */
export function useSight(): Sight {
  useHeld();
  useDocument((state) => state.project);
  useView((view) => view.selection);
  useView((view) => view.hairlineXMm);
  useView((view) => view.snaps);
  usePreferences((preferences) => preferences.units);
  useView((view) => view.choosing);
  return sightNow();
}

/** Tells whenever the hand has heard something; returns what ends that. */
export const followHand = (onChange: () => void): (() => void) => useHeld.subscribe(onChange);

/** What tools may look at, as it is now. */
export function contextNow(): ToolContext {
  const { project } = useDocument.getState();
  const { hairlineXMm, snaps, choosing } = useView.getState();
  const lengths = lengthsIn(usePreferences.getState().units);
  return {
    project,
    scene: sceneFor(project),
    selection: drawnSelection(),
    hairlineXMm,
    snaps: { ...snaps, gridMm: gridIn(lengths.units, snaps.gridMm) },
    lengths,
    choosing,
    heightOver: drawnHeight,
    wingEdges: wingEdgesInPlan(),
  };
}

function carryOut(step: ReturnType<Hand["hear"]>["step"]): void {
  const drawing = useDocument.getState();
  if (step.gesture === "abandoned") drawing.cancelGesture();
  for (const command of step.commands) drawing.dispatchInGesture(command);
  if (step.gesture === "closed" || (step.gesture === undefined && step.commands.length > 0)) {
    drawing.endGesture();
  }
  if (step.selection !== undefined) useView.getState().select(step.selection ?? undefined);
  if (step.tool !== undefined) useView.getState().setTool(step.tool);
}
