import { useEffect, useRef, useState } from "react";
import type { Project } from "../../core/project/index.ts";
import type { Solid } from "../../core/solids/index.ts";
import { core, latestWins } from "../worker/index.ts";

/** Every part in space; those of the project before until they are there. Undefined before the first come. */
export function useSolids(project: Project): readonly Solid[] | undefined {
  const [solids, setSolids] = useState<readonly Solid[]>();
  const ask = useRef<(project: Project) => void>(undefined);
  useEffect(() => {
    let isWanted = true;
    const show = (found: readonly Solid[]) => {
      if (isWanted) setSolids(found);
    };
    ask.current = latestWins((wanted: Project) => core().solids(wanted), {
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
