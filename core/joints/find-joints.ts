import { derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import {
  at,
  crossSpace,
  dotSpace,
  lengthSpace,
  type PlanPoint,
  type Problem,
  type SpacePoint,
} from "../foundation/index.ts";
import { glueOf, type Project, type ResolvedLines } from "../project/index.ts";
import {
  type CornerFold,
  edgeLengthsInSpace,
  type FenceSheet,
  facePointAt,
  type Hand,
  normalAtPlace,
  partIdOf,
  placeOfXi,
  type RegionEdge,
  type SectionSheet,
  type Sheet,
  spacePointAt,
  xiOfPlan,
} from "../surfaces/index.ts";
import { cutOfFold, type FoldCut } from "./cut-of-fold.ts";
import type { Joint, SetBack } from "./types.ts";

/** Sheets whose shared edge misses by more than this in height do not meet: half of what glue may fill. */
const MEETING_HEIGHT_MM = 0.5;

/** How far beside a shared edge the neighbour is looked for, so that its own border does not hide it. */
const NUDGE_MM = 0.02;

/** A joint between two sheets before it is counted out to hands. */
interface SheetJoint {
  readonly kind: Joint["kind"];
  readonly sheets: readonly [Sheet, Sheet];
  readonly edgeIds: readonly [string, string];
  readonly lengthMm: number;
  readonly foldRad: readonly [number, number];
  readonly cut: FoldCut;
  readonly from: PlanPoint;
  readonly to: PlanPoint;
}

/**
 * Every joint of the tray and every set-back that it asks of an edge: folds at profile corners, halves that meet
 * on the centre line, edges that follow another sheet's edge, and fences under their sheets. An edge that follows
 * but misses its neighbour in height is a problem, and no joint.
 */
export function findJoints(
  project: Project,
  lines: ResolvedLines,
  sheets: readonly Sheet[],
  folds: readonly CornerFold[],
): {
  readonly joints: readonly Joint[];
  readonly setBacks: readonly SetBack[];
  readonly problems: readonly Problem[];
} {
  const glue = { gapMm: project.glue.gapMm, gapLimitMm: glueOf(project)?.gapLimitMm ?? 0 };
  const sections = sheets.filter((sheet): sheet is SectionSheet => sheet.kind === "section");
  const fences = sheets.filter((sheet): sheet is FenceSheet => sheet.kind === "fence");
  const found: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  const problems: Problem[] = [];

  for (const fold of folds) {
    const pair = fold.sheetIds.map((id) => sections.find((sheet) => sheet.id === id));
    const [front, rear] = pair;
    if (!front || !rear) continue;
    const cut = cutOfFold(fold.foldRad, front.depths, rear.depths, glue);
    for (const [i, sheet] of [front, rear].entries()) {
      const amount = cut.setBackMm[i] ?? 0;
      const bevel = cut.bevelRad[i] ?? 0;
      const amountsMm = edgesWithId(sheet, fold.edgeId).map(() => [amount, amount] as const);
      setBacks.push({ sheetId: sheet.id, edgeId: fold.edgeId, amountsMm, bevelRad: [bevel, bevel] });
    }
    for (const stretch of fold.stretches) {
      const edgeIds = [fold.edgeId, fold.edgeId] as const;
      const foldRad = [fold.foldRad, fold.foldRad] as const;
      found.push({ kind: "corner", sheets: [front, rear], edgeIds, foldRad, cut, ...stretch });
    }
  }

  for (const sheet of sections) {
    if (sheet.hands.length !== 2) continue;
    const edges = edgesOf(sheet).filter(({ role }) => role === "centre");
    for (const edgeId of new Set(edges.map((edge) => edge.edgeId))) {
      const mirrored = (normal: SpacePoint): SpacePoint => ({ ...normal, y: -normal.y });
      const met = meetAlong(sheet, edgeId, glue, sheet, {
        isBeside: () => true,
        at: ({ z, normal }) => ({ z, normal: mirrored(normal) }),
      });
      setBacks.push(met.setBack);
      found.push(...met.joints.map((joint) => ({ ...joint, kind: "centre" as const })));
    }
  }

  for (const [key, follow] of Object.entries(lines.follows)) {
    const [itemId, edgeId] = key.split("/");
    const followers = sections.filter((sheet) => sheet.itemId === itemId);
    const followed = sections.filter((sheet) => sheet.itemId === follow.itemId);
    const sides = [
      ...followers.map((sheet) => ({
        sheet,
        edgeIds: [edgeId ?? ""],
        others: followed,
        otherEdge: follow.edgeIds[0] ?? "",
        isFollower: true,
      })),
      ...followed.map((sheet) => ({
        sheet,
        edgeIds: follow.edgeIds,
        others: followers,
        otherEdge: edgeId ?? "",
        isFollower: false,
      })),
    ];
    for (const { sheet, edgeIds, others, otherEdge, isFollower } of sides) {
      for (const ownEdge of edgeIds) {
        for (const edge of edgesWithId(sheet, ownEdge)) {
          const partner = partnerOf(sheet, edge, others);
          if (!partner) continue;
          const met = meetAlong(sheet, ownEdge, glue, partner, {
            isBeside: (middle) => facePointAt(partner, 0, outside(middle)) !== undefined,
            at: ({ p }) => surfaceOver(partner, p),
          });
          if (met.gap && met.gap.gapMm > MEETING_HEIGHT_MM) {
            if (isFollower) problems.push(apart(sheet, partner, ownEdge, met.gap));
            break;
          }
          if (!setBacks.some((known) => known.sheetId === sheet.id && known.edgeId === ownEdge))
            setBacks.push(met.setBack, ...imageSetBack(sheet, met.setBack));
          if (isFollower) {
            found.push(
              ...met.joints.map((joint) => ({
                ...joint,
                kind: "shared edge" as const,
                edgeIds: [ownEdge, otherEdge] as const,
              })),
            );
          }
          break;
        }
      }
    }
  }

  for (const fence of fences) found.push(...seatJoints(fence, sections));
  return { joints: countOut(found), setBacks, problems };
}

const edgesOf = (sheet: Sheet): readonly RegionEdge[] => sheet.loops.flatMap(({ edges }) => edges);
const edgesWithId = (sheet: Sheet, edgeId: string): readonly RegionEdge[] =>
  edgesOf(sheet).filter((edge) => edge.edgeId === edgeId);

interface SurfacePlace {
  readonly z: number;
  readonly normal: SpacePoint;
}

/** A traced place on an edge: the plan point, the direction of travel, and the sheet's own surface there. */
interface EdgePlace extends SurfacePlace {
  readonly p: PlanPoint;
  readonly dx: number;
  readonly dy: number;
}

function placeOnEdge(sheet: SectionSheet, edge: RegionEdge, share: number): EdgePlace | undefined {
  const { trace } = edge;
  if (!trace) return undefined;
  const t = trace.from + (trace.to - trace.from) * share;
  const [x, y] = pointOnPiece(trace.piece, t);
  const [vx, vy] = derivativeOnPiece(trace.piece, t);
  const sign = trace.to > trace.from ? 1 : -1;
  const size = Math.hypot(vx, vy) * sign;
  return { p: { x, y }, dx: vx / size, dy: vy / size, ...surfaceOver(sheet, { x, y }) };
}

/** A sheet's drawn surface over a plan point, whether its outline holds it or not. */
function surfaceOver({ chart }: SectionSheet, p: PlanPoint): SurfacePlace {
  const place = placeOfXi(chart, xiOfPlan(chart, p));
  return { z: spacePointAt(chart, place, p.y, 0).z, normal: normalAtPlace(chart, place) };
}

/** The sheet that lies just outside an edge, among those given. */
function partnerOf(
  sheet: SectionSheet,
  edge: RegionEdge,
  others: readonly SectionSheet[],
): SectionSheet | undefined {
  const place = placeOnEdge(sheet, edge, 0.5);
  if (!place) return undefined;
  return others.find((other) => facePointAt(other, 0, outside(place)) !== undefined);
}

/** A point a hair outside the edge: to the right of its direction of travel. */
const outside = ({ p, dx, dy }: EdgePlace): PlanPoint => ({ x: p.x + dy * NUDGE_MM, y: p.y - dx * NUDGE_MM });

interface Neighbour {
  /** Whether the neighbour lies along a region edge, judged by the middle of that edge. */
  readonly isBeside: (middle: EdgePlace) => boolean;
  /** Its surface at a place of the edge. */
  readonly at: (place: EdgePlace) => SurfacePlace;
}

/** How a sheet meets its neighbour along all its region edges with one id. */
function meetAlong(
  sheet: SectionSheet,
  edgeId: string,
  glue: { readonly gapMm: number; readonly gapLimitMm: number },
  partner: SectionSheet,
  neighbour: Neighbour,
): {
  readonly setBack: SetBack;
  readonly joints: readonly Omit<SheetJoint, "kind">[];
  readonly gap?: { readonly gapMm: number; readonly at: PlanPoint };
} {
  const amountsMm: (readonly [number, number])[] = [];
  const folds: number[] = [];
  let gap: { readonly gapMm: number; readonly at: PlanPoint } | undefined;
  let lengthMm = 0;
  let ends: readonly [PlanPoint, PlanPoint] | undefined;
  let lastCut: FoldCut | undefined;
  for (const edge of edgesWithId(sheet, edgeId)) {
    const places = [0, 0.5, 1].map((share) => placeOnEdge(sheet, edge, share));
    const isBeside = places[1] !== undefined && neighbour.isBeside(places[1]);
    const edgeFolds = places.map((place) => {
      if (!place || !isBeside) return 0;
      const other = neighbour.at(place);
      const missMm = Math.abs(other.z - place.z);
      if (!gap || missMm > gap.gapMm) gap = { gapMm: missMm, at: place.p };
      return foldBetween(place, other.normal);
    });
    const [first, last] = [at(edgeFolds, 0), at(edgeFolds, -1)];
    const cuts = [first, last].map((fold) => cutOfFold(fold, sheet.depths, partner.depths, glue));
    amountsMm.push([at(at(cuts, 0).setBackMm, 0), at(at(cuts, -1).setBackMm, 0)]);
    folds.push(first, last);
    lastCut ??= at(cuts, 0);
    lengthMm += edgeLengthsInSpace(sheet.chart, edge, 0).drawnMm;
    const [start, end] = [placeOnEdge(sheet, edge, 0), placeOnEdge(sheet, edge, 1)];
    if (start && end) ends = [ends?.[0] ?? start.p, end.p];
  }
  const bevels = folds.map((fold) => at(cutOfFold(fold, sheet.depths, partner.depths, glue).bevelRad, 0));
  const setBack: SetBack = {
    sheetId: sheet.id,
    edgeId,
    amountsMm,
    bevelRad: [bevels[0] ?? 0, bevels.at(-1) ?? 0],
  };
  const joints =
    ends && lastCut
      ? [
          {
            sheets: [sheet, partner] as const,
            edgeIds: [edgeId, edgeId] as const,
            lengthMm,
            foldRad: [folds[0] ?? 0, folds.at(-1) ?? 0] as const,
            cut: lastCut,
            from: ends[0],
            to: ends[1],
          },
        ]
      : [];
  return { setBack, joints, ...(gap && { gap }) };
}

/**
 * The fold at an edge, rad: the turn from this sheet's outward direction to the neighbour's inward one, about the
 * edge; positive when the neighbour rises toward this sheet's inward normal (the core lies inside the fold).
 */
function foldBetween({ dx, dy, normal }: EdgePlace, other: SpacePoint): number {
  const along = { x: dx, y: dy, z: -(normal.x * dx + normal.y * dy) / normal.z };
  const edge = {
    x: along.x / lengthSpace(along),
    y: along.y / lengthSpace(along),
    z: along.z / lengthSpace(along),
  };
  return Math.atan2(dotSpace(crossSpace(edge, other), normal), dotSpace(normal, other));
}

/** A joined sheet has its edge on the left half as well. */
function imageSetBack(sheet: SectionSheet, setBack: SetBack): readonly SetBack[] {
  const edgeId = `${setBack.edgeId}.left`;
  if (edgesWithId(sheet, edgeId).length === 0) return [];
  const amountsMm = setBack.amountsMm.map(([a, b]) => [b, a] as const).reverse();
  return [{ ...setBack, edgeId, amountsMm, bevelRad: [setBack.bevelRad[1], setBack.bevelRad[0]] }];
}

const apart = (
  sheet: SectionSheet,
  partner: SectionSheet,
  nodeId: string,
  gap: { readonly gapMm: number; readonly at: PlanPoint },
): Problem => ({
  kind: "sheets-do-not-meet",
  place: { itemId: sheet.itemId, nodeId },
  name: sheet.name,
  otherName: partner.name,
  gapMm: gap.gapMm,
  at: gap.at,
});

/** A fence under each sheet that it stands under. */
function seatJoints(fence: FenceSheet, sections: readonly SectionSheet[]): readonly SheetJoint[] {
  const stations = [...fence.seat].sort((a, b) => a.alongMm - b.alongMm);
  const square: FoldCut = { cut: "square", bevelRad: [0, 0], setBackMm: [0, 0] };
  return [...new Set(stations.map(({ sheetId }) => sheetId))].flatMap((sheetId): readonly SheetJoint[] => {
    const over = stations.filter((station) => station.sheetId === sheetId);
    const sheet = sections.find(({ id }) => id === sheetId);
    if (!sheet || over.length < 2) return [];
    const [first, last] = [at(over, 0), at(over, -1)];
    let lengthMm = 0;
    for (let i = 0; i + 1 < over.length; i++) {
      const [a, b] = [at(over, i), at(over, i + 1)];
      lengthMm += Math.hypot(b.alongMm - a.alongMm, b.midZMm - a.midZMm);
    }
    const base = { kind: "fence seat" as const, foldRad: [0, 0] as const, cut: square, lengthMm };
    return [{ ...base, sheets: [fence, sheet], edgeIds: ["upper", ""], from: first.at, to: last.at }];
  });
}

/** Gives every joint to the hands that have it, in a fixed order, and names it. */
function countOut(found: readonly SheetJoint[]): readonly Joint[] {
  const counts = new Map<string, number>();
  return found.flatMap((joint) =>
    handPairs(joint).map(([first, second]): Joint => {
      const partIds = [partIdOf(joint.sheets[0].id, first), partIdOf(joint.sheets[1].id, second)] as const;
      const pair = `${partIds[0]}/${partIds[1]}`;
      const count = (counts.get(pair) ?? 0) + 1;
      counts.set(pair, count);
      const onLeft = first === "left" || second === "left";
      const side = ({ x, y }: PlanPoint): PlanPoint => ({ x, y: onLeft && joint.kind !== "centre" ? -y : y });
      return {
        id: count === 1 ? pair : `${pair}#${count}`,
        kind: joint.kind,
        partIds,
        edgeIds: joint.edgeIds,
        lengthMm: joint.lengthMm,
        foldRad: joint.foldRad,
        cut: joint.cut.cut,
        bevelRad: joint.cut.bevelRad,
        setBackMm: joint.cut.setBackMm,
        from: side(joint.from),
        to: side(joint.to),
      };
    }),
  );
}

function handPairs(joint: SheetJoint): readonly (readonly [Hand, Hand])[] {
  const [first, second] = joint.sheets;
  if (joint.kind === "centre") return [["right", "left"]];
  if (first.hands.length === 2 && second.hands.length === 2)
    return [
      ["right", "right"],
      ["left", "left"],
    ];
  if (first.hands.length === 2)
    return [
      ["right", "whole"],
      ["left", "whole"],
    ];
  if (second.hands.length === 2)
    return [
      ["whole", "right"],
      ["whole", "left"],
    ];
  return [["whole", "whole"]];
}
