import { useEffect, useState } from "react";
import type { Design } from "../../../core/design.ts";
import { core, type ToBuy } from "../../worker/index.ts";

interface Known {
  readonly of: Design;
  readonly toBuy: ToBuy;
}

/** Cloth on its rolls and paper for the templates; those of the design before until they are counted, none before the first. */
export function useToBuy(design: Design | undefined): {
  readonly toBuy: ToBuy | undefined;
  readonly isOld: boolean;
} {
  const [known, setKnown] = useState<Known>();
  useEffect(() => {
    if (design === undefined) return undefined;
    let isWanted = true;
    core()
      .toBuy()
      .then(
        (toBuy) => {
          if (isWanted) setKnown({ of: design, toBuy });
        },
        () => {
          if (isWanted) setKnown({ of: design, toBuy: NOT_COUNTED });
        },
      );
    return () => {
      isWanted = false;
    };
  }, [design]);
  return { toBuy: known?.toBuy, isOld: known?.of !== design };
}

const NOT_COUNTED: ToBuy = { cloth: [], paper: [] };
