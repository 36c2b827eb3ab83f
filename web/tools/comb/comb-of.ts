import {
  type CombTooth,
  type CurvePiece,
  curvatureComb,
  type Kink,
  kinksOf,
  reversePiece,
  startOfPiece,
  type TightestPlace,
  tightestPlace,
} from "../../../core/curves/index.ts";
import { distance2, toRadians, type Vec2 } from "../../../core/foundation/index.ts";
import { coreOf, foamOf, type Item, leastBendRatioOf, type Project } from "../../../core/project/index.ts";
import { chosenProfile } from "../chosen-profile.ts";
import type { DrawingView } from "../drawing-view.ts";
import { findLine, type Scene, type SceneLine } from "../scene.ts";
import { lineOfSelection } from "../selected-line.ts";
import type { Selection } from "../types.ts";

/** How a line bends: its teeth, where it is tightest, its kinks, and what the foam that is bent along it allows. */
export interface Comb {
  readonly key: string;
  readonly view: DrawingView;
  readonly name: string;
  readonly teeth: readonly CombTooth[];
  readonly tightest: TightestPlace | undefined;
  readonly kinks: readonly Kink[];
  /** Absent where no foam is bent along the line: an outline is only cut. */
  readonly limit?: { readonly foam: string; readonly thicknessMm: number; readonly radiusMm: number };
}

/** Combs of the chosen line, and of the profile that a chosen section bends over; lines without a curve have none. */
export function combsOf(
  {
    project,
    scene,
    selection,
  }: { readonly project: Project; readonly scene: Scene; readonly selection: Selection | undefined },
  spacingMm: number,
): readonly Comb[] {
  const chosen = lineOfSelection(selection);
  const profile = chosenProfile(project, selection);
  const refs = [chosen, profile && ({ of: "profile", profileId: profile.id } as const)];
  const lines = new Set(refs.flatMap((ref) => (ref ? (findLine(scene, ref) ?? []) : [])));
  return [...lines].flatMap((line) => combOf(project, line, spacingMm) ?? []);
}

/** A larger turn is no kink but a corner that is meant. */
const LARGEST_KINK_RAD = toRadians(15);

function combOf(project: Project, line: SceneLine, spacingMm: number): Comb | undefined {
  const pieces = line.broken ? [] : runOf(line);
  if (pieces.every(({ kind }) => kind === "line")) return undefined;
  const limit = limitOf(project, line);
  return {
    key: `${line.view}/${line.name}`,
    view: line.view,
    name: line.name,
    teeth: curvatureComb(pieces, spacingMm),
    tightest: tightestPlace(pieces),
    kinks: kinksOf(pieces, line.closed).filter(({ turnRad }) => Math.abs(turnRad) <= LARGEST_KINK_RAD),
    ...(limit ? { limit } : {}),
  };
}

/** The pieces of a line in its drawn direction: outlines may have been compiled the other way round. */
function runOf(line: SceneLine): readonly CurvePiece[] {
  return line.edges.flatMap((edge) =>
    edge.stretches.map(({ piece, points }) => {
      const [from, to] = [points[0], points.at(-1)];
      return from && to && isTurned(piece, from, to) ? reversePiece(piece) : piece;
    }),
  );
}

const isTurned = (piece: CurvePiece, from: Vec2, to: Vec2): boolean => {
  const start = startOfPiece(piece);
  return distance2(start, to) < distance2(start, from);
};

/** The largest radius that any foam bent along the line needs: over a profile its sections, along a fence itself. */
function limitOf(project: Project, line: SceneLine): Comb["limit"] {
  const limits = project.items
    .filter((item) => bendsAlong(item, line))
    .flatMap((item) => limitOfItem(project, item));
  return limits.sort((a, b) => b.radiusMm - a.radiusMm)[0];
}

function bendsAlong(item: Item, { line }: SceneLine): boolean {
  if (line.of === "profile") return item.kind === "section" && item.profileId === line.profileId;
  return line.of === "item" && item.kind === "fence" && item.id === line.itemId;
}

function limitOfItem(project: Project, item: Item): readonly NonNullable<Comb["limit"]>[] {
  if (item.kind === "plate") return [];
  const { foamId, thicknessMm } = coreOf(project, item);
  const foam = foamOf(project, foamId);
  return foam ? [{ foam: foam.name, thicknessMm, radiusMm: leastBendRatioOf(foam) * thicknessMm }] : [];
}
