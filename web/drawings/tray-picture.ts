import { ON_CENTRE_LINE_MM } from "../../core/foundation/index.ts";
import { type Project, resolveLines } from "../../core/project/index.ts";
import { type DrawingView, type SceneLine, sceneOf } from "../tools/index.ts";
import { type Bounds, boundsOf, heightOf, type Spot, widthOf } from "./scale.ts";

/** One line of a picture, in mm: plan (x, y), side (x, z). */
export interface PictureLine {
  /** A sheet is filled and an opening cut out of it, both without an outline; edges and lines are drawn. */
  readonly kind: "sheet" | "opening" | "edge" | "line";
  readonly points: readonly Spot[];
}

/** A tray as a small picture shows it: plan with both halves, and side view. Plain data, to be kept beside the work. */
export interface TrayPicture {
  readonly plan: readonly PictureLine[];
  readonly side: readonly PictureLine[];
}

/** Points nearer to each other than this share of the picture's size are one. */
const FINEST_SHARE = 1 / 400;

/** The picture of a document. Lines that cannot be made yet are left out; an empty tray gives no lines. */
export function trayPicture(project: Project): TrayPicture {
  const { lines, mirrored } = sceneOf(project, resolveLines(project));
  const plan = picture(lines, "plan");
  const right = mirrored ? plan.flatMap(withoutCentre) : plan;
  return {
    plan: mirrored ? [...right, ...right.map(mirrorLine)] : right,
    side: picture(lines, "side"),
  };
}

/** The box around the lines of one view; undefined where nothing is drawn. */
export const pictureBounds = (lines: readonly PictureLine[]): Bounds | undefined =>
  boundsOf(lines.flatMap(({ points }) => points));

function picture(lines: readonly SceneLine[], view: DrawingView): readonly PictureLine[] {
  const drawn = lines.filter((line) => line.view === view && !line.broken).flatMap(picturesOf);
  const bounds = pictureBounds(drawn);
  const finestMm = bounds ? Math.hypot(widthOf(bounds), heightOf(bounds)) * FINEST_SHARE : 0;
  return drawn
    .map((line) => ({ ...line, points: thinned(line.points, finestMm) }))
    .filter(({ points }) => points.length > 1);
}

/** A closed line is what it encloses and its edge; any other is itself. */
function picturesOf(line: SceneLine): readonly PictureLine[] {
  const points = pointsOf(line);
  if (!line.closed) return [{ kind: "line", points }];
  const start = points.slice(0, 1);
  return [
    { kind: line.kind === "opening" ? "opening" : "sheet", points },
    { kind: "edge", points: [...points, ...start] },
  ];
}

/** Where a half meets its image nothing is drawn: the edge is divided there into what stands off the centre line. */
function withoutCentre(line: PictureLine): readonly PictureLine[] {
  if (line.kind !== "edge") return [line];
  const runs: Spot[][] = [[]];
  line.points.forEach((point, index) => {
    const before = line.points[index - 1];
    if (before && isOnCentre(before) && isOnCentre(point)) runs.push([]);
    runs.at(-1)?.push(point);
  });
  return runs.filter((run) => run.length > 1).map((points) => ({ kind: "edge", points }));
}

const isOnCentre = ([, y]: Spot): boolean => Math.abs(y) < ON_CENTRE_LINE_MM;

const pointsOf = ({ edges }: SceneLine): readonly Spot[] =>
  edges.flatMap(({ stretches }) => stretches.flatMap(({ points }) => points));

/** The points that can be told apart, on tenths of a mm; the last one stays. */
function thinned(points: readonly Spot[], finestMm: number): readonly Spot[] {
  const kept: Spot[] = [];
  points.forEach(([across, up], index) => {
    const before = kept.at(-1);
    const isLast = index === points.length - 1;
    const isNear = before !== undefined && Math.hypot(across - before[0], up - before[1]) < finestMm;
    if (isNear && !isLast) return;
    kept.push([tenth(across), tenth(up)]);
  });
  return kept;
}

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

const mirrorLine = (line: PictureLine): PictureLine => ({
  ...line,
  points: line.points.map(([x, y]): Spot => [x, -y]),
});
