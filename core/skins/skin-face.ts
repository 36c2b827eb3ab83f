import type { Seam } from "../cutting/index.ts";
import { at } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { fibreVolumeShare, mixOf, pliesOfFace } from "../laminate/index.ts";
import { type ClothPly, type LaminateSettings, laminateOf, type Project } from "../project/index.ts";
import type { FieldGrid } from "./cut-region.ts";
import { edgeFlaps } from "./edge-finishes.ts";
import type { FaceRegion } from "./face-regions.ts";
import { fieldSeams } from "./field-seams.ts";
import { type JointLap, jointLaps } from "./joint-laps.ts";
import { faceJoints } from "./joint-lines.ts";
import { type CutField, type CutSettings, isNarrow, layFace, type PlyCloth } from "./lay-face.ts";
import { fieldsOfCut } from "./name-fields.ts";
import { outsideCorners } from "./outside-corners.ts";
import { type Area, areaMm2 } from "./polygons.ts";
import { laidPlies, mixedOnKg, onTrayKg } from "./resin-per-area.ts";
import { dissolvedFoams } from "./shop-problems.ts";
import { sessionMinutes, skinSessions } from "./skin-sessions.ts";
import { skinSteps } from "./skin-steps.ts";
import type { LapAtJoint, SkinFace, SkinFaceName } from "./types.ts";
import { fieldMinutes, type WorkedArea } from "./work-minutes.ts";

/** What a face is laid on. */
export interface FaceGround {
  /** Fences that are glued on before the skins. */
  readonly fencesOnCore: ReadonlySet<string>;
  readonly regions: readonly FaceRegion[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
}

/** One face of the tray with its plies, its fields and their cloth, and the sessions that they are laid in. */
export function skinFace(
  face: SkinFaceName,
  { regions, joints, seams, fencesOnCore }: FaceGround,
  project: Project,
): SkinFace {
  const laminate = laminateOf(project);
  const isUpper = face === "upper face";
  const isLaidSecond = isUpper === (project.jig.attitude === "inverted");
  const cloths = pliesOfFace(project, isUpper ? "upper" : "lower");
  const plies = laidPlies(cloths, laminate);
  const lines = faceJoints(regions, joints);
  const settings = { overlapMm: laminate.overlapMm, staggerMm: 2 * laminate.overlapMm };
  const laps = jointLaps(lines, plies.length, settings);
  const load = ({ own, plies: pieces }: CutField) => {
    const cloth = pieces.map(workedAreaOf);
    const clothMm2 = cloth.map((ply) => ply.areaMm2);
    return { face: own, cloth, mixedKg: mixedOnKg(own.areaMm2, clothMm2, plies, laminate) };
  };
  const mostMinutes = sessionMinutes(laminate) || Number.POSITIVE_INFINITY;
  const cut = regions.map((region) =>
    layFace(
      region,
      cloths.map((ply) => clothOf(ply, laminate)),
      laps,
      {
        ...settings,
        longestMm: laminate.longestPatchMm,
        foamSeams: foamSeamsOf(region, seams),
        beyondEdges: (ply) =>
          edgeFlaps(region, ply, laminate, { isLaidSecond, standsOnCore: fencesOnCore.has(region.part.id) }),
      },
      (field) => fieldMinutes(load(field), laminate) <= mostMinutes,
    ),
  );
  const fields = cut.flatMap((one) =>
    fieldsOfCut(one, plies, (field) => {
      const loaded = load(field);
      return { workMinutes: fieldMinutes(loaded, laminate), mixedKg: loaded.mixedKg };
    }),
  );
  const graph = fieldSeams(cut, lines);
  const dissolves = dissolvedFoams(
    regions.map(({ part }) => part),
    project,
  );
  const sessions = dissolves.length > 0 ? [] : skinSessions(face, fields, graph, laminate);
  const sessionOf = fields.map(({ id }) => sessions.findIndex(({ fieldIds }) => fieldIds.includes(id)));
  const clothMm2 = plies.map((_, ply) =>
    fields
      .flatMap(({ patches }) => patches)
      .reduce((sum, one) => (one.ply === ply + 1 ? sum + one.areaMm2 : sum), 0),
  );
  const faceMm2 = regions.reduce((sum, { area }) => sum + areaMm2(area), 0);
  const skinned: SkinFace = {
    face,
    areaMm2: faceMm2,
    partIds: [...new Set(regions.map(({ part }) => part.id))],
    plies,
    thicknessMm: plies.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    allowedMm: isUpper ? project.skins.upperMm : project.skins.lowerMm,
    fibreVolumeShare: fibreVolumeShare(mixOf(laminate)),
    mixedKg: mixedOnKg(faceMm2, clothMm2, plies, laminate),
    massKg: onTrayKg(faceMm2, clothMm2, plies, laminate),
    fields,
    laps: laps.map(lapAtJoint),
    corners: outsideCorners(face, lines, joints, cloths),
    sessions,
    sessionSeamMm: graph.reduce(
      (sum, { fields: [a, b], lengthMm }) => (at(sessionOf, a) === at(sessionOf, b) ? sum : sum + lengthMm),
      0,
    ),
  };
  return {
    ...skinned,
    sessions: sessions.map((session) => ({
      ...session,
      steps: skinSteps(skinned, session, project, fencesOnCore),
    })),
  };
}

const workedAreaOf = (pieces: readonly Area[]): WorkedArea => ({
  areaMm2: pieces.reduce((sum, piece) => sum + areaMm2(piece), 0),
  narrowMm2: pieces.reduce((sum, piece) => sum + (isNarrow(piece) ? areaMm2(piece) : 0), 0),
});

const lapAtJoint = ({ joint, ply, from, ...lap }: JointLap): LapAtJoint => {
  const [first, second] = joint.regions.map(({ part }) => part.id);
  const [fromPartId = "", ontoPartId = ""] = from === 0 ? [first, second] : [second, first];
  return { jointId: joint.jointId, ply: ply + 1, fromPartId, ontoPartId, ...lap };
};

const clothOf = ({ cloth, warpRad }: ClothPly, { selvedgeMm }: LaminateSettings): PlyCloth => ({
  warpRad,
  acrossMm: cloth.rollWidthMm - 2 * selvedgeMm,
});

/** The glued seams inside the foam of a face, which no seam of the cloth may lie on. */
function foamSeamsOf({ part, fromFlat }: FaceRegion, seams: readonly Seam[]): CutSettings["foamSeams"] {
  const own = seams.filter(({ partId }) => partId === part.id);
  const grid: FieldGrid = {
    uMm: own.filter(({ runs }) => runs === "along ruling").map(({ atMm }) => fromFlat({ u: atMm, v: 0 }).u),
    vMm: own.filter(({ runs }) => runs === "across rulings").map(({ atMm }) => atMm),
  };
  return part.kind === "transition" ? { uMm: [], vMm: [] } : grid;
}
