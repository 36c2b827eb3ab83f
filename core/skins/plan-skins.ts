import type { Seam } from "../cutting/index.ts";
import type { Memory, Problem } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { solidHours } from "../laminate/index.ts";
import type { Part } from "../patterns/index.ts";
import { couponProblems, type LaminateSettings, laminateOf, type Project } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { finishedEdges } from "./edge-finishes.ts";
import { type FaceRegion, faceRegions, isOnCore } from "./face-regions.ts";
import { filletsOf } from "./fillets.ts";
import { faceJoints } from "./joint-lines.ts";
import { farthestInMm, reachProblem } from "./reach.ts";
import { shopProblems } from "./shop-problems.ts";
import { skinFace } from "./skin-face.ts";
import { skinTasks } from "./skin-tasks.ts";
import type { SkinFace, SkinFaceName, SkinPlan } from "./types.ts";
import { zoneCloth } from "./zone-cloth.ts";

/** The laminate may be so much thicker or thinner than the geometry allows for, mm (common practice). */
const OFF_ALLOWANCE_MM = 0.2;

/** What is skinned. */
export interface SkinSources {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly seams: readonly Seam[];
}

const FACES: readonly SkinFaceName[] = ["lower face", "fence sides", "upper face"];

/** The faces in the order of the work: what looks up from the jig first; the sides of fences follow the lower face, on which they stand. */
const inOrderOfWork = ({ jig }: Project): readonly SkinFaceName[] =>
  jig.attitude === "inverted" ? FACES : ["upper face", "lower face", "fence sides"];

/**
 * How the faces are skinned: areas as developed, plies, the cloth of every ply in patches, resin, sessions and pots. The
 * sides of fences have the plies of the lower face. Geometry keeps its nominal skins. Problems: laminate-off-allowance,
 * coupon-not-believable, and those of `shopProblems`. A mixing ratio that is missing is no problem: its cards say so.
 */
export function planSkins(
  { sheets, parts, joints, seams }: SkinSources,
  project: Project,
  memory: Memory,
): { readonly plan: SkinPlan; readonly problems: readonly Problem[] } {
  const laminate = laminateOf(project);
  // A fence that is cut from a panel has its skins already.
  const bare = parts.filter(({ panel }) => panel === undefined);
  const regions = memory.recall("skin regions", [...sheets, ...bare, ...joints], () =>
    faceRegions(sheets, bare, joints),
  );
  const fencesOnCore = new Set(parts.flatMap(({ id }) => (isOnCore(id, parts, sheets) ? [id] : [])));
  const { items: zones, problems: zoneProblems } = memory.recall(
    "zones",
    [regions, ...SKIN_GROUND.map((field) => project[field]), project.symmetry],
    () => zoneCloth({ sheets, regions, joints: faceJointsOf(regions, joints) }, project),
  );
  const faces = inOrderOfWork(project)
    .map((face) =>
      memory.recall(
        `skin of ${face}`,
        [regions, zones, ...seams, ...SKIN_GROUND.map((field) => project[field]), project.jig.attitude],
        () =>
          skinFace(
            face,
            {
              regions: regions.filter((one) => one.face === face),
              joints,
              seams,
              fencesOnCore,
              zones: zones.filter(({ region }) => region.face === face),
            },
            project,
          ),
      ),
    )
    .filter(({ areaMm2, plies }) => areaMm2 > 0 && plies.length > 0);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const { resin, shopCelsius, peelPlyKgPerM2, hands } = laminate;
  const farthestMm = memory.recall("reach", [...sheets, ...parts], () => farthestInMm(sheets, parts));
  const fillets = faces.length > 0 ? filletsOf(joints, parts, sheets, laminate.filletMm) : [];
  const curedHours = resin ? solidHours(resin, shopCelsius) : 0;
  return {
    plan: {
      faces,
      tasks: skinTasks(faces, project.jig.attitude, { hands, curedHours }),
      cloths: clothsOf(faces),
      peelPlyMm2: peelPlyKgPerM2 > 0 ? sum(faces.map(({ areaMm2 }) => areaMm2)) : 0,
      fillets,
      edges: faces.length > 0 ? finishedEdges(regions, laminate) : [],
      mixedKg: sum(faces.map(({ mixedKg }) => mixedKg)),
      massKg: sum([...faces, ...fillets].map(({ massKg }) => massKg)),
      solidHours: curedHours,
    },
    problems: [
      ...couponProblems(project),
      ...faces.flatMap((one) => offAllowance(one, laminate)),
      ...shopProblems(faces, parts, project),
      ...(faces.length > 0 ? reachProblem(farthestMm, laminate.reachMm) : []),
      ...edgeProblems(project, parts),
      ...zoneProblems,
    ],
  };
}

/** The joints of every face on that face. */
const faceJointsOf = (regions: readonly FaceRegion[], joints: readonly Joint[]) =>
  FACES.flatMap((face) =>
    faceJoints(
      regions.filter((one) => one.face === face),
      joints,
    ),
  );

/** What of the document the skins follow from, besides the parts. */
const SKIN_GROUND = ["laminate", "materials", "skins"] as const;

function clothsOf(faces: readonly SkinFace[]): SkinPlan["cloths"] {
  const byCloth = new Map<string, { readonly clothId: string; readonly name: string; areaMm2: number }>();
  for (const { plies, zones, fields } of faces)
    for (const { clothId, areaMm2 } of fields.flatMap(({ patches }) => patches)) {
      const name = [...plies, ...zones].find((one) => one.clothId === clothId)?.clothName ?? clothId;
      const found = byCloth.get(clothId) ?? { clothId, name, areaMm2: 0 };
      found.areaMm2 += areaMm2;
      byCloth.set(clothId, found);
    }
  return [...byCloth.values()];
}

/** Finishes of edges that are no longer there. Problem: unknown-reference. */
const edgeProblems = (project: Project, parts: readonly Part[]): readonly Problem[] =>
  laminateOf(project).edgeFinishes.flatMap(({ itemId, edgeId }, i): readonly Problem[] => {
    const isThere = parts.some(
      (part) => part.itemId === itemId && part.edges.some((edge) => edge.edgeId === edgeId),
    );
    const place = { setting: `laminate.edgeFinishes.${i}` };
    return isThere
      ? []
      : [
          {
            kind: "unknown-reference",
            place,
            name: `Edge finish ${i + 1}`,
            field: "edge",
            missingId: `${itemId} ${edgeId}`,
          },
        ];
  });

/** Of plies that the builder chose, or whose coupon was weighed. The fences' sides have no allowance: their foam is drawn as it stands. */
function offAllowance(
  { face, thicknessMm, allowedMm }: SkinFace,
  { lower, upper, weighed }: LaminateSettings,
): readonly Problem[] {
  const isUpper = face === "upper face";
  const isChosen = (isUpper ? upper : lower) !== undefined || weighed.fibreMassShare !== undefined;
  if (face === "fence sides" || !isChosen || Math.abs(thicknessMm - allowedMm) <= OFF_ALLOWANCE_MM) return [];
  const setting = isUpper ? "skins.upperMm" : "skins.lowerMm";
  return [{ kind: "laminate-off-allowance", place: { setting }, name: face, thicknessMm, allowedMm }];
}
