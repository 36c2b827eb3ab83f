import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Solid } from "../../core/solids/index.ts";
import { type LookStage, type LookState, makeStage, type PlacedLabel } from "./stage-of-look.ts";

interface Shown {
  readonly solids: readonly Solid[] | undefined;
  readonly state: LookState;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The stage on a canvas for as long as it is on the page; drawn once for every change, with the words on it. */
export function useStage(
  canvas: RefObject<HTMLCanvasElement | null>,
  { solids, state, widthPx, heightPx }: Shown,
): {
  readonly stage: () => LookStage | undefined;
  readonly labels: readonly PlacedLabel[];
  readonly hasNoWebGl: boolean;
} {
  const stage = useRef<LookStage>(undefined);
  const [labels, setLabels] = useState<readonly PlacedLabel[]>([]);
  const [hasNoWebGl, setHasNoWebGl] = useState(false);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element) return;
    stage.current = makeStage(element);
    if (!stage.current) setHasNoWebGl(true);
    return () => {
      stage.current?.dispose();
      stage.current = undefined;
    };
  }, [canvas]);
  useLayoutEffect(() => stage.current?.setSolids(solids ?? []), [solids]);
  useLayoutEffect(() => stage.current?.setSize(widthPx, heightPx), [widthPx, heightPx]);

  const { camera, bend, bends, apart, turnedAtMm, isChosen, tintOf, paint } = state;
  // biome-ignore lint/correctness/useExhaustiveDependencies: solids and size change the picture though the stage keeps them.
  useEffect(() => {
    const frame = requestAnimationFrame(() => {
      const drawn = stage.current?.draw({ camera, bend, bends, apart, turnedAtMm, isChosen, tintOf, paint });
      if (drawn) setLabels(drawn);
    });
    return () => cancelAnimationFrame(frame);
  }, [camera, bend, bends, apart, turnedAtMm, isChosen, tintOf, paint, solids, widthPx, heightPx]);
  return { stage: useCallback(() => stage.current, []), labels, hasNoWebGl };
}
