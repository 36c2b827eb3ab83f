import { useEffect, useState } from "react";
import type { PatchMap, SkinPlan } from "../../../core/skins/index.ts";
import { core } from "../../worker/index.ts";

/** Where every patch of these skins lies; those of the skins before until they are there, and undefined before the first. */
export function usePatchMaps(skins: SkinPlan | undefined): readonly PatchMap[] | undefined {
  const [maps, setMaps] = useState<readonly PatchMap[]>();
  useEffect(() => {
    if (skins === undefined) return undefined;
    let isWanted = true;
    core()
      .patchMaps()
      .then(
        (found) => {
          if (isWanted) setMaps(found);
        },
        () => {
          if (isWanted) setMaps(undefined);
        },
      );
    return () => {
      isWanted = false;
    };
  }, [skins]);
  return maps;
}
