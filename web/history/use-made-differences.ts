import { useEffect, useState } from "react";
import type { ComparisonRow, Project } from "../../core/project/index.ts";
import { compareMeasures } from "../../core/totals/index.ts";
import { startCore } from "../worker/index.ts";

/** In what two trays differ as they are made; it is counted beside the page, and may take a while. */
export function useMadeDifferences(
  before: Project,
  after: Project,
): readonly ComparisonRow[] | "counting" | "failed" {
  const [made, setMade] = useState<readonly ComparisonRow[] | "counting" | "failed">("counting");
  useEffect(() => {
    setMade("counting");
    const { core, stop } = startCore();
    let isWanted = true;
    const tell = (told: readonly ComparisonRow[] | "failed") => {
      if (isWanted) setMade(told);
    };
    measureBoth(core, before, after).then(tell, () => tell("failed"));
    return () => {
      isWanted = false;
      stop();
    };
  }, [before, after]);
  return made;
}

async function measureBoth(
  core: ReturnType<typeof startCore>["core"],
  before: Project,
  after: Project,
): Promise<readonly ComparisonRow[]> {
  const from = await core.measures(before);
  return compareMeasures(from, await core.measures(after));
}
