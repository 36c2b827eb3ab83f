import { useEffect, useRef, useState } from "react";
import type { Project } from "../../core/project/index.ts";
import type { Solid } from "../../core/solids/index.ts";
import { latestWins, startCore } from "../worker/index.ts";

/** Started when the look is first opened, and kept. */
let started: ReturnType<typeof startCore>["core"] | undefined;

/**
 * Every part in space; those of the project before until they are there. Undefined before the first come. A core of its
 * own makes them, so that the drawing never waits for them.
 */
export function useSolids(project: Project): readonly Solid[] | undefined {
  const [solids, setSolids] = useState<readonly Solid[]>();
  const ask = useRef<(project: Project) => void>(undefined);
  useEffect(() => {
    let isWanted = true;
    const show = (found: readonly Solid[]) => {
      if (isWanted) setSolids(found);
    };
    started ??= startCore().core;
    const { solids: make } = started;
    ask.current = latestWins((wanted: Project) => make(wanted), {
      onResult: show,
      onFailure: () => show([]),
    });
    return () => {
      isWanted = false;
      ask.current = undefined;
    };
  }, []);
  useEffect(() => ask.current?.(project), [project]);
  return solids;
}
