import type { Problem } from "../foundation/index.ts";
import type { ResolvedLines } from "../project/index.ts";
import { facePointAt, type RegionEdge, type SectionSheet } from "../surfaces/index.ts";
import { edgesWithId, outside, placeOnEdge, surfaceOver } from "./edge-places.ts";
import { type Meeting, meetAlong, type Neighbour } from "./meet-along.ts";
import type { GlueLine, Meetings, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/** Sheets whose shared edge misses by more than this in height do not meet: half of what glue may fill. */
const MEETING_HEIGHT_MM = 0.5;

/** One side of a shared edge: a sheet, its edge there, and the sheets that may lie on the other side. */
interface Side {
  readonly sheet: SectionSheet;
  readonly edgeId: string;
  readonly others: readonly SectionSheet[];
  readonly otherEdgeId: string;
  readonly isFollower: boolean;
}

/**
 * The joints along edges that follow another item's edge, with set-backs on both sides. The joint is counted from
 * the follower; a follower that misses its neighbour in height is a problem, and neither is set back.
 */
export function sharedEdgeJoints(
  lines: ResolvedLines,
  sections: readonly SectionSheet[],
  glue: GlueLine,
): Meetings {
  const joints: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  const problems: Problem[] = [];
  for (const side of sidesOf(lines, sections)) {
    const { sheet, edgeId, isFollower } = side;
    for (const partner of partnersOf(side)) {
      const met = meetAlong(sheet, edgeId, neighbourOf(partner), glue);
      if (met.gapMm > MEETING_HEIGHT_MM) {
        if (isFollower) problems.push(apart(side, partner, met));
        continue;
      }
      const isKnown = setBacks.some((known) => known.sheetId === sheet.id && known.edgeId === edgeId);
      if (!isKnown) setBacks.push(met.setBack, ...imageSetBack(sheet, met.setBack));
      if (isFollower && met.joint)
        joints.push({ ...met.joint, kind: "shared edge", edgeIds: [edgeId, side.otherEdgeId] });
      break;
    }
  }
  return { joints, setBacks, problems };
}

function sidesOf(lines: ResolvedLines, sections: readonly SectionSheet[]): readonly Side[] {
  return Object.entries(lines.follows).flatMap(([key, follow]): readonly Side[] => {
    const [itemId = "", edgeId = ""] = key.split("/");
    const followers = sections.filter((sheet) => sheet.itemId === itemId);
    const followed = sections.filter((sheet) => sheet.itemId === follow.itemId);
    const otherEdgeId = follow.edgeIds[0] ?? "";
    return [
      ...followers.map((sheet) => ({ sheet, edgeId, others: followed, otherEdgeId, isFollower: true })),
      ...followed.flatMap((sheet) =>
        follow.edgeIds.map((own) => ({
          sheet,
          edgeId: own,
          others: followers,
          otherEdgeId: edgeId,
          isFollower: false,
        })),
      ),
    ];
  });
}

/** The sheets that lie just outside the region edges of a side, each once, in the order of the edges. */
function partnersOf({ sheet, edgeId, others }: Side): ReadonlySet<SectionSheet> {
  const beside = (edge: RegionEdge): readonly SectionSheet[] => {
    const middle = placeOnEdge(sheet, edge, 0.5);
    return middle
      ? others.filter((other) => facePointAt(other, 0, outside(middle)) !== undefined).slice(0, 1)
      : [];
  };
  return new Set(edgesWithId(sheet, edgeId).flatMap(beside));
}

const neighbourOf = (sheet: SectionSheet): Neighbour => ({
  sheet,
  isBeside: (middle) => facePointAt(sheet, 0, outside(middle)) !== undefined,
  at: ({ p }) => surfaceOver(sheet, p),
});

/** A joined sheet has its edge on the left half as well. */
function imageSetBack(sheet: SectionSheet, setBack: SetBack): readonly SetBack[] {
  const edgeId = `${setBack.edgeId}.left`;
  if (edgesWithId(sheet, edgeId).length === 0) return [];
  const amountsMm = setBack.amountsMm.map(([a, b]) => [b, a] as const).reverse();
  return [{ ...setBack, edgeId, amountsMm, bevelRad: [setBack.bevelRad[1], setBack.bevelRad[0]] }];
}

const apart = ({ sheet, edgeId }: Side, partner: SectionSheet, met: Meeting): Problem => ({
  kind: "sheets-do-not-meet",
  place: { itemId: sheet.itemId, nodeId: edgeId },
  name: sheet.name,
  otherName: partner.name,
  gapMm: met.gapMm,
  at: met.gapAt,
});
