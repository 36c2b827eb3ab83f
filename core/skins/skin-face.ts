import type { Seam } from "../cutting/index.ts";
import { at } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { fibreVolumeShare, mixOf, pliesOfFace } from "../laminate/index.ts";
import { type ClothPly, type LaminateSettings, laminateOf, type Project } from "../project/index.ts";
import type { FieldGrid } from "./cut-region.ts";
import { edgeFlaps, hasFlangeOn } from "./edge-finishes.ts";
import type { FaceRegion } from "./face-regions.ts";
import { fieldSeams } from "./field-seams.ts";
import type { Grouping } from "./group-fields.ts";
import { type JointLap, jointLaps } from "./joint-laps.ts";
import { faceJoints } from "./joint-lines.ts";
import { lapCrossings } from "./lap-crossings.ts";
import {
  type CutFace,
  type CutField,
  type CutSettings,
  isNarrow,
  layFace,
  type PlyCloth,
} from "./lay-face.ts";
import { fieldsOfCut, patchesOfZone } from "./name-fields.ts";
import { outsideCorners } from "./outside-corners.ts";
import { type Area, areaMm2 } from "./polygons.ts";
import { isLaidSecond } from "./ready-steps.ts";
import { laidPlies, mixedOnKg, onTrayKg } from "./resin-per-area.ts";
import { dissolvedFoams } from "./shop-problems.ts";
import { groupSessions, sessionMinutes, skinSessions } from "./skin-sessions.ts";
import { skinSteps } from "./skin-steps.ts";
import type { LaidZone, LapAtJoint, SkinFace, SkinFaceName, SkinField } from "./types.ts";
import { fieldMinutes, type WorkedArea } from "./work-minutes.ts";
import type { ZoneCloth } from "./zone-cloth.ts";
import { lapsUnder, zoneFigures } from "./zone-figures.ts";

/** What a face is laid on. */
export interface FaceGround {
  /** Fences that are glued on before the skins. */
  readonly fencesOnCore: ReadonlySet<string>;
  readonly regions: readonly FaceRegion[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
  /** Reinforcement on this face. */
  readonly zones: readonly ZoneCloth[];
}

/** One face of the tray with its plies, its fields and their cloth, and the sessions that they are laid in. */
export function skinFace(
  face: SkinFaceName,
  { regions, joints, seams, fencesOnCore, zones }: FaceGround,
  project: Project,
): SkinFace {
  const laminate = laminateOf(project);
  const isUpper = face === "upper face";
  const comesSecond = isLaidSecond(face, project.jig.attitude);
  const cloths = pliesOfFace(project, isUpper ? "upper" : "lower");
  const plies = laidPlies(cloths, laminate);
  const hasFlange = regions.some((region) => hasFlangeOn(region, laminate));
  const lines = faceJoints(regions, joints);
  const settings = { overlapMm: laminate.overlapMm, staggerMm: 2 * laminate.overlapMm };
  const laps = jointLaps(lines, plies.length, settings);
  const load = ({ own, plies: pieces }: CutField, laid: readonly ZoneCloth[]) => {
    const cloth = pieces.map(workedAreaOf);
    const clothMm2 = cloth.map((ply) => ply.areaMm2);
    const ownKg = mixedOnKg(own.areaMm2, clothMm2, plies, laminate);
    return {
      face: own,
      cloth: [...cloth, ...laid.flatMap((zone) => zone.plies.map(workedAreaOf))],
      mixedKg: laid.reduce((sum, zone) => sum + zoneFigures(zone, laminate).mixedKg, ownKg),
    };
  };
  const withAllZones = (field: CutField) =>
    load(
      field,
      field.zones.map(({ zone }) => zone),
    );
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
        zones: zones.filter((zone) => zone.region === region),
        beyondEdges: (ply) =>
          edgeFlaps(region, ply, laminate, {
            isLaidSecond: comesSecond,
            standsOnCore: fencesOnCore.has(region.part.id),
          }),
      },
      (field) => fieldMinutes(withAllZones(field), laminate) <= mostMinutes,
    ),
  );
  const graph = fieldSeams(cut, lines);
  const dissolves = dissolvedFoams(
    regions.map(({ part }) => part),
    project,
  );
  // A zone may come to be laid with any field it reaches over: each is given the time for it.
  const minutes = cut.flatMap((one) =>
    one.fields.map((field) => fieldMinutes(withAllZones(field), laminate)),
  );
  const grouping = dissolves.length > 0 ? [] : groupSessions(minutes, graph, laminate);
  const laidWith = zoneFields(cut, grouping);
  const fields = cut.flatMap((one) =>
    fieldsOfCut(one, plies, (field) => {
      const loaded = load(
        field,
        field.zones.flatMap(({ zone }) => (laidWith.get(zone) === field ? [zone] : [])),
      );
      return { workMinutes: fieldMinutes(loaded, laminate), mixedKg: loaded.mixedKg };
    }),
  );
  const cutFields = cut.flatMap((one) => one.fields);
  const laidFields = fields.map((field, i): SkinField => {
    const own = (cutFields[i]?.zones ?? []).filter(({ zone }) => laidWith.get(zone) === cutFields[i]);
    return own.length === 0
      ? field
      : {
          ...field,
          patches: [
            ...field.patches,
            ...own.flatMap(({ zone }) => patchesOfZone(zone, field.id, plies.length)),
          ],
        };
  });
  const sessions =
    grouping.length === 0 ? [] : skinSessions(face, laidFields, { seams: graph, grouping }, laminate);
  const sessionOf = laidFields.map(({ id }) => sessions.findIndex(({ fieldIds }) => fieldIds.includes(id)));
  const clothMm2 = plies.map((_, ply) =>
    laidFields
      .flatMap(({ patches }) => patches)
      .reduce((sum, one) => (one.ply === ply + 1 ? sum + one.areaMm2 : sum), 0),
  );
  const faceThicknessMm = plies.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  const faceMm2 = regions.reduce((sum, { area }) => sum + areaMm2(area), 0);
  const laidZones = zones.flatMap((zone): readonly LaidZone[] => {
    const field = laidWith.get(zone);
    if (field === undefined) return [];
    const touched = cutFields.flatMap((one, i) => (one.zones.some((on) => on.zone === zone) ? [i] : []));
    const own = at(sessionOf, cutFields.indexOf(field));
    return [
      {
        ...zoneFigures(zone, laminate),
        fieldId: at(laidFields, cutFields.indexOf(field)).id,
        totalThicknessMm: zoneFigures(zone, laminate).thicknessMm + faceThicknessMm,
        onCured: touched.flatMap((i) => (at(sessionOf, i) < own ? [at(laidFields, i).id] : [])),
        overLapsOf: lapsUnder(zone, cut, plies.length),
      },
    ];
  });
  const skinned: SkinFace = {
    face,
    areaMm2: faceMm2,
    partIds: [...new Set(regions.map(({ part }) => part.id))],
    plies,
    thicknessMm: faceThicknessMm,
    allowedMm: isUpper ? project.skins.upperMm : project.skins.lowerMm,
    fibreVolumeShare: fibreVolumeShare(mixOf(laminate)),
    mixedKg: laidZones.reduce(
      (sum, { mixedKg }) => sum + mixedKg,
      mixedOnKg(faceMm2, clothMm2, plies, laminate),
    ),
    massKg: laidZones.reduce((sum, { massKg }) => sum + massKg, onTrayKg(faceMm2, clothMm2, plies, laminate)),
    fields: laidFields,
    zones: laidZones,
    laps: laps.map(lapAtJoint),
    crossings: lapCrossings(laps.map(lapAtJoint), joints),
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
      steps: skinSteps(skinned, session, project, { fencesOnCore, hasFlange }),
    })),
  };
}

/** With which field each zone is laid: of those it reaches over the one that is laid last, and among them where most of it lies. */
function zoneFields(cut: readonly CutFace[], grouping: Grouping): ReadonlyMap<ZoneCloth, CutField> {
  const found = new Map<
    ZoneCloth,
    { readonly field: CutField; readonly session: number; readonly mm2: number }
  >();
  for (const [i, field] of cut.flatMap((one) => one.fields).entries())
    for (const { zone, onFieldMm2: mm2 } of field.zones) {
      const session = grouping[i] ?? 0;
      const known = found.get(zone);
      if (!known || session > known.session || (session === known.session && mm2 > known.mm2))
        found.set(zone, { field, session, mm2 });
    }
  return new Map([...found].map(([zone, { field }]) => [zone, field]));
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
