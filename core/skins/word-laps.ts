import { formatMm } from "../foundation/index.ts";
import type { LapAtJoint, SkinFace } from "./types.ts";

/** A lap beside a joint as it stands in tables. */
export interface LapRow {
  readonly joint: string;
  readonly ply: string;
  /** Cloth that goes down first, and cloth that laps over it. */
  readonly first: string;
  readonly over: string;
  /** The part that the lap lies on, and from where to where beyond the joint. */
  readonly lies: string;
  readonly fromTo: string;
  readonly note: string;
}

/** The laps of a face, joint by joint and ply by ply. */
export const lapRows = (face: SkinFace): readonly LapRow[] => face.laps.map((lap) => rowOf(face, lap));

function rowOf(face: SkinFace, lap: LapAtJoint): LapRow {
  const { jointId, ply, fromPartId, ontoPartId, clearMm, overlapMm, isTight, isStacked } = lap;
  const [from, onto] = [fromPartId, ontoPartId].map((partId) => sessionOf(face, partId));
  const isLater = from !== undefined && onto !== undefined && from < onto;
  const code = (partId: string) => `${codeOf(face, partId)}.${ply}`;
  const notes = [
    ...(from !== onto ? ["onto cured cloth"] : []),
    ...(isTight ? ["little room: press it down well"] : []),
    ...(isStacked ? [`over the lap of ply ${ply - 1}`] : []),
  ];
  return {
    joint: jointId,
    ply: `${ply}`,
    first: code(isLater ? fromPartId : ontoPartId),
    over: code(isLater ? ontoPartId : fromPartId),
    lies: ontoPartId,
    fromTo: `${formatMm(clearMm)} to ${formatMm(clearMm + overlapMm)}`,
    note: notes.join("; "),
  };
}

/** The first session that lays cloth of a part on a face. */
function sessionOf({ fields, sessions }: SkinFace, partId: string): number | undefined {
  const own = fields.filter((field) => field.partId === partId).map(({ id }) => id);
  const found = sessions.findIndex(({ fieldIds }) => fieldIds.some((id) => own.includes(id)));
  return found < 0 ? undefined : found;
}

/** `S2R-L`, however many fields it has. */
const codeOf = ({ fields }: SkinFace, partId: string): string => {
  const own = fields.filter((field) => field.partId === partId);
  const [first] = own;
  return first === undefined ? partId : own.length > 1 ? first.id.replace(/\d+$/, "") : first.id;
};

/** Why laps of two plies lie over each other, one sentence a joint; and where cloths cross in corners. */
export const stackedWords = (face: SkinFace): readonly string[] => [
  ...besideJoints(face),
  ...face.crossings.map(
    ({ jointIds: [a, b], fromPartIds: [one, other], ontoPartId }) =>
      `Where ${a} and ${b} meet, cloth of ${one} and of ${other} runs onto ${ontoPartId} and crosses there in every ply: cut the upper one back to a plain lap, and press the corner down.`,
  ),
];

const besideJoints = ({ laps }: SkinFace): readonly string[] =>
  laps
    .filter(({ isStacked }) => isStacked)
    .map(
      ({ jointId, ply, ontoPartId, roomMm }) =>
        `At ${jointId} the lap of ply ${ply} lies over that of ply ${ply - 1}: beyond the joint ${ontoPartId} goes on for only ${formatMm(roomMm)} mm before it ends or meets a fence, and two laps of 25 mm do not lie beside each other there. Press them down together.`,
    );
