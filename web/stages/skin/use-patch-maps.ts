import { useEffect, useState } from "react";
import type { PatchMap, SkinPlan } from "../../../core/skins/index.ts";
import { core } from "../../worker/index.ts";

/** Where every patch of these skins lies; undefined until it is there. */
export function usePatchMaps(skins: SkinPlan | undefined): readonly PatchMap[] | undefined {
  const [found, setFound] = useState<{ readonly skins: SkinPlan; readonly maps: readonly PatchMap[] }>();
  useEffect(() => {
    if (skins === undefined) return undefined;
    let isWanted = true;
    core()
      .patchMaps()
      .then(
        (maps) => {
          if (isWanted) setFound({ skins, maps });
        },
        () => {
          if (isWanted) setFound(undefined);
        },
      );
    return () => {
      isWanted = false;
    };
  }, [skins]);
  return found?.skins === skins ? found?.maps : undefined;
}
