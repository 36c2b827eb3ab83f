import type { Seam } from "../../cutting/index.ts";
import { at, type PlanPoint } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";
import { foamOf, leastBendRatioOf, lieSettingsOf } from "../../project/index.ts";
import type { LyingSheet, Sheet } from "../../surfaces/index.ts";
import type { JigGround } from "../jig-ground.ts";
import { drawnFoamFace, type Laid, laidFace } from "../laid/laid-face.ts";
import { type FoamSpot, foamStretches, withTrimLines } from "./foam-stretches.ts";
import { laneCourses } from "./lane-courses.ts";
import { placesOfLine } from "./lane-places.ts";
import { liesInShape } from "./lies-in-shape.ts";
import type { Lane, LaneFoam } from "./types.ts";

/** Foam shorter than this between two interruptions is no lane, mm. */
const SHORTEST_MM = 60;
/** Newtons on a kilogram. */
const GRAVITY = 9.80665;

/** What lanes run over: the sheets, and their parts, which say where foam lies in its shape by itself. */
export interface LyingFoam {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  /** Splices want ribs on both sides. */
  readonly seams: readonly Seam[];
  /** How the foam lies where that is not as drawn. */
  readonly laid: Laid;
}

/** What of sheets and parts lies on ribs: not the fences, which stand. */
export function lyingFoam({ sheets, parts, seams, laid }: LyingFoam): LyingFoam {
  const lying = parts.filter(({ kind }) => kind !== "fence");
  return {
    sheets: sheets.filter(({ kind }) => kind !== "fence"),
    parts: lying,
    seams: seams.filter(({ partId }) => lying.some(({ id }) => id === partId)),
    laid,
  };
}

/**
 * The lanes of every sheet that lies on the jig: some lines over it that run with its edges over the ribs across (or along),
 * divided where an opening interrupts it. A mirrored sheet has lanes on its right hand alone.
 */
export function lanesOf(
  { sheets, parts, laid }: LyingFoam,
  project: JigGround,
  over: Lane["over"],
): readonly Lane[] {
  return sheets.flatMap((sheet): readonly Lane[] => {
    if (sheet.kind === "fence" || sheet.planLoops.length === 0) return [];
    const part = parts.find(({ sheetId }) => sheetId === sheet.id);
    const foam = foamUnder(sheet, project);
    return part && foam ? lanesOn(sheet, { part, foam, over, project, laid }) : [];
  });
}

function foamUnder({ foamId, thicknessMm }: Sheet, project: JigGround): LaneFoam | undefined {
  const foam = foamOf(project, foamId);
  if (!foam) return undefined;
  const kgPerM2 = (foam.densityKgPerM3 * thicknessMm) / 1000 + lieSettingsOf(project).wetKgPerM2;
  return {
    stiffness: (foam.modulusMPa * thicknessMm ** 3) / 12,
    thicknessMm,
    weightMPa: (kgPerM2 * GRAVITY) / 1e6,
    strainLimit: 1 / (2 * leastBendRatioOf(foam)),
  };
}

interface Ground {
  readonly part: Part;
  readonly foam: LaneFoam;
  readonly over: Lane["over"];
  readonly project: JigGround;
  readonly laid: Laid;
}

function lanesOn(sheet: LyingSheet, { part, foam, over, project, laid }: Ground): readonly Lane[] {
  const joined = isHeldBeside(part);
  if (joined === "on both sides") return [];
  const isUpright = project.jig.attitude === "upright";
  const depthMm = isUpright ? sheet.depths.coreLowerMm : sheet.depths.coreUpperMm;
  const [face, drawn] = [laidFace(sheet, depthMm, laid), drawnFoamFace(sheet, depthMm, laid)];
  const pasts = laid.pasts.filter(({ sheetId }) => sheetId === sheet.id);
  const pastMm = Math.max(0, ...pasts.map(({ lengthMm }) => lengthMm));
  const isShaped = liesInShape(sheet, part);
  const faceAt = (spot: PlanPoint): FoamSpot | undefined => {
    const point = face(spot);
    return point && inAttitude(point, isUpright ? 1 : -1);
  };
  return laneCourses(sheet, over, pastMm).flatMap(({ course, widthMm }) =>
    foamStretches(course, faceAt).flatMap((stretch): readonly Lane[] => {
      const { spots, net } = withTrimLines(
        stretch.spots,
        faceAt,
        (p) => pasts.length === 0 || drawn(p) !== undefined,
      );
      const { endsAside } = stretch;
      const places = placesOfLine(spots, over, (spot) => !isShaped(spot));
      if (at(places, -1).alongMm < SHORTEST_MM) return [];
      const netMm = [at(places, net[0]).alongMm, at(places, net[1]).alongMm] as const;
      const isFree = (isAside: boolean) => joined === "nowhere" && !isAside;
      const hangsFree = [isFree(endsAside[0]), isFree(endsAside[1])] as const;
      return [{ partId: part.id, over, places, widthMm, foam, hangsFree, netMm }];
    }),
  );
}

/**
 * Where neighbours hold a part by its sides: a transition lies between the edges of sheets that the ribs place, and takes up
 * what these miss. Between two it is not looked at, along one its ends do not hang free.
 */
function isHeldBeside({ kind, edges }: Part): "nowhere" | "on one side" | "on both sides" {
  if (kind !== "transition") return "nowhere";
  const sides = new Set(edges.flatMap(({ edgeId, role }) => (role === "joint" ? [edgeId] : [])));
  if (sides.has("first") && sides.has("second")) return "on both sides";
  return sides.has("first") || sides.has("second") ? "on one side" : "nowhere";
}

/** A place of a face as the jig has it: turned over where the tray is, with its normal up. */
function inAttitude({ x, y, z, normal }: FoamSpot, upSign: 1 | -1): FoamSpot {
  const turned = { x: normal.x, y: normal.y, z: upSign * normal.z };
  const sense = turned.z < 0 ? -1 : 1;
  return {
    x,
    y,
    z: upSign * z,
    normal: { x: sense * turned.x, y: sense * turned.y, z: sense * turned.z },
  };
}
