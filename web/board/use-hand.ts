import { useCallback, useRef, useState } from "react";
import { gridIn, lengthsIn } from "../lengths/index.ts";
import { useDocument, usePreferences, useView } from "../stores/index.ts";
import { type Hand, type Sight, type ToolContext, type ToolEvent, takeUp } from "../tools/index.ts";
import { drawnHeight } from "./drawn-height.ts";
import { drawnSelection } from "./drawn-selection.ts";
import { sceneFor } from "./use-scene.ts";
import { wingEdgesInPlan } from "./wing-edges.ts";

/** The tool in hand: what it shows, and how it hears what the builder does. */
export function useHand(): { readonly sight: Sight; readonly hear: (event: ToolEvent) => void } {
  const tool = useView((view) => view.tool);
  const held = useRef<Hand>(takeUp(tool));
  const [, show] = useState<Hand>();
  useContextOf();
  if (held.current.name !== tool) held.current = takeUp(tool);

  const hear = useCallback((event: ToolEvent) => {
    if (held.current.name !== useView.getState().tool) held.current = takeUp(useView.getState().tool);
    const { hand, step } = held.current.hear(event, contextNow());
    held.current = hand;
    carryOut(step);
    show(hand);
  }, []);
  return { sight: held.current.sight(contextNow()), hear };
}

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

/** Draws again when anything that a tool looks at changes. */
function useContextOf(): void {
  useDocument((state) => state.project);
  useView((view) => view.selection);
  useView((view) => view.hairlineXMm);
  useView((view) => view.snaps);
  usePreferences((preferences) => preferences.units);
  useView((view) => view.choosing);
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
