import { assertNever } from "../../core/foundation/index.ts";
import type { Grip, Project } from "../../core/project/index.ts";

/** How many things of a kind are chosen, in words for one and for more. */
export interface CountedGrips {
  readonly count: number;
  readonly words: string;
}

const KINDS = ["section", "transition", "fence", "plate", "opening", "profile", "node"] as const;
type Kind = (typeof KINDS)[number];

/** What is chosen, counted by kind: `2 sections`, `1 fence`, `5 nodes`. */
export function countGrips(project: Project, grips: readonly Grip[]): readonly CountedGrips[] {
  const kinds = grips.map((grip) => kindOf(project, grip));
  return KINDS.flatMap((kind): readonly CountedGrips[] => {
    const count = kinds.filter((other) => other === kind).length;
    return count === 0 ? [] : [{ count, words: `${count} ${kind}${count === 1 ? "" : "s"}` }];
  });
}

function kindOf(project: Project, { line, nodeId }: Grip): Kind | undefined {
  if (nodeId !== undefined) return "node";
  switch (line.of) {
    case "opening":
    case "profile":
      return line.of;
    case "item":
    case "lower-edge":
    case "edge":
      return project.items.find(({ id }) => id === line.itemId)?.kind;
    default:
      return assertNever(line);
  }
}
