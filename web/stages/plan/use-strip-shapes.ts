import { useEffect, useState } from "react";
import type { SpaceShape } from "../../../core/book/index.ts";
import type { Design } from "../../../core/design.ts";
import { core } from "../../worker/index.ts";

/** Every strip in space, as pictures of the whole tray show it; those of the design before until they are there. */
export function useStripShapes(design: Design): readonly SpaceShape[] {
  const { project } = design;
  const [shapes, setShapes] = useState<readonly SpaceShape[]>([]);
  useEffect(() => {
    let isWanted = true;
    core()
      .shapes(project)
      .then(
        (found) => {
          if (isWanted) setShapes(found);
        },
        () => {
          if (isWanted) setShapes([]);
        },
      );
    return () => {
      isWanted = false;
    };
  }, [project]);
  return shapes;
}
