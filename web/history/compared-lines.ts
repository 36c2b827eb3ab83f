import { type Project, resolveLines } from "../../core/project/index.ts";
import { codeOfItem, codeOfOpening, type Spot } from "../drawings/index.ts";
import { type DrawingView, lineKey, type SceneLine, sceneOf } from "../tools/index.ts";

/** A line of one view in two documents: points in mm, absent where the document has no such line. */
export interface ComparedLine {
  readonly key: string;
  readonly change: "same" | "changed" | "added" | "gone";
  /** The code of its item, else its name. */
  readonly name: string;
  readonly before: readonly Spot[] | undefined;
  readonly after: readonly Spot[] | undefined;
}

/** Every line that one of two documents draws in a view, those that are the same in both first. */
export function comparedLines(before: Project, after: Project, view: DrawingView): readonly ComparedLine[] {
  const [from, to] = [linesOf(before, view), linesOf(after, view)];
  const keys = [...new Set([...from.keys(), ...to.keys()])];
  const lines = keys.map((key) => compareLine(key, from.get(key), to.get(key)));
  return [
    ...lines.filter(({ change }) => change === "same"),
    ...lines.filter(({ change }) => change !== "same"),
  ];
}

interface DrawnLine {
  readonly name: string;
  readonly points: readonly Spot[];
}

function linesOf(project: Project, view: DrawingView): ReadonlyMap<string, DrawnLine> {
  const lines = sceneOf(project, resolveLines(project)).lines.filter((line) => line.view === view);
  return new Map(
    lines.map((line) => [lineKey(line.line), { name: nameOf(line, project), points: pointsOf(line) }]),
  );
}

/** End to end; a closed line comes back to its start. */
function pointsOf({ edges, closed }: SceneLine): readonly Spot[] {
  const points = edges.flatMap(({ stretches }) =>
    stretches.flatMap((stretch): readonly Spot[] => stretch.points),
  );
  return closed ? [...points, ...points.slice(0, 1)] : points;
}

function nameOf({ line, name }: SceneLine, project: Project): string {
  if (line.of === "profile") return name;
  if (line.of === "opening") {
    const opening = project.openings.find(({ id }) => id === line.openingId);
    return opening ? codeOfOpening(opening) : name;
  }
  const item = project.items.find(({ id }) => id === line.itemId);
  return item ? codeOfItem(item) : name;
}

function compareLine(key: string, before: DrawnLine | undefined, after: DrawnLine | undefined): ComparedLine {
  return {
    key,
    name: after?.name ?? before?.name ?? "",
    before: before?.points,
    after: after?.points,
    change: !before ? "added" : !after ? "gone" : isSame(before.points, after.points) ? "same" : "changed",
  };
}

const isSame = (one: readonly Spot[], other: readonly Spot[]): boolean =>
  one.length === other.length &&
  one.every(([x, up], index) => Object.is(x, other[index]?.[0]) && Object.is(up, other[index]?.[1]));
