import { useEffect, useRef, useState } from "react";
import type { Project } from "../../core/project/index.ts";
import type { Solid } from "../../core/solids/index.ts";
import { latestWins, startCore } from "../worker/index.ts";

/**
 * Every part in space; those of the project before until they are there. Undefined before the first come. A core of its
 * own makes them, so that the drawing never waits for them.
 */
export function useSolids(project: Project): readonly Solid[] | undefined {
  const [solids, setSolids] = useState<readonly Solid[]>();
  const ask = useRef<(project: Project) => void>(undefined);
  useEffect(() => {
    const { core, stop } = startCore();
    ask.current = latestWins((wanted: Project) => core.solids(wanted), {
      onResult: setSolids,
      onFailure: () => setSolids([]),
    });
    return () => {
      ask.current = undefined;
      stop();
    };
  }, []);
  useEffect(() => ask.current?.(project), [project]);
  return solids;
}
