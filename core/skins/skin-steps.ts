import { formatNumber } from "../foundation/index.ts";
import { solidHours } from "../laminate/index.ts";
import { laminateOf, type Project } from "../project/index.ts";
import { patchesOfSession } from "./patches-of-session.ts";
import { isLaidSecond, readySteps } from "./ready-steps.ts";
import type { SkinFace, SkinPatch, SkinSession, SkinStep } from "./types.ts";
import { FLANGE_STEP } from "./word-edges.ts";

/** What of the tray the steps follow from: the fences that are glued to the core, and whether free edges of sheets have a flange. */
export interface StepGround {
  readonly fencesOnCore: ReadonlySet<string>;
  readonly hasFlange: boolean;
}

/**
 * What is done in a session, in order, each step with its reason: foam made ready, wetted, cloth ply by ply, peel ply. The
 * patches that a step lays are named by it.
 */
export function skinSteps(
  face: SkinFace,
  session: SkinSession,
  project: Project,
  { fencesOnCore, hasFlange }: StepGround,
): readonly SkinStep[] {
  const { preWetKgPerM2, peelPlyKgPerM2, filletMm } = laminateOf(project);
  const patches = patchesOfSession(face, session);
  const fences = fencesOf(face, session);
  const onCore = fences.filter((id) => fencesOnCore.has(id));
  const onSkin = fences.filter((id) => !fencesOnCore.has(id));
  const isFirst = face.sessions[0]?.id === session.id;
  const wetted = session.areaMm2 / 1e6;
  const isSecond = isLaidSecond(face.face, project.jig.attitude);
  return [
    ...(isFirst && isSecond && hasFlange ? [{ ...FLANGE_STEP, patchIds: [] }] : []),
    ...readySteps(face, isFirst, project),
    {
      title: "Weigh and mix one pot as its card says, and the next one only when that is spread",
      why: "Resin left standing in a pot heats itself and sets there.",
      patchIds: [],
    },
    ...(preWetKgPerM2 > 0
      ? [
          {
            title: `Wet the bare foam: about ${formatNumber(1000 * preWetKgPerM2 * wetted, 0)} g over ${formatNumber(wetted, 2)} m², until it is evenly dull`,
            why: "Dry foam drinks from the cloth, and the cloth then stays white and does not hold.",
            patchIds: [],
          },
        ]
      : []),
    ...(filletMm > 0 ? coreFillets(onCore, filletMm) : []),
    ...face.plies.map((_, ply) => plyStep(patches, ply + 1)).filter(({ patchIds }) => patchIds.length > 0),
    ...zoneSteps(face, patches),
    ...(filletMm > 0 ? skinFillets(onSkin, filletMm) : []),
    ...(peelPlyKgPerM2 > 0 ? [peelStep(session)] : []),
    {
      title:
        "Clean the tools, stand what is left in cups outdoors until it has set, and look at the face after half an hour",
      why: "Nothing is worked after it has begun to gel: a lifted edge is pressed down while it is still wet, or ground back when it is hard.",
      patchIds: [],
    },
    ...cureSteps(project),
  ];
}

/** The fences whose sides a session lays. */
const fencesOf = ({ face, fields }: SkinFace, { fieldIds }: SkinSession): readonly string[] =>
  face === "fence sides"
    ? [...new Set(fields.filter(({ id }) => fieldIds.includes(id)).map(({ partId }) => partId))]
    : [];

/** Fillets under the cloth: that of a fence which is glued to the core runs over them onto the floor. */
const coreFillets = (fenceIds: readonly string[], filletMm: number): readonly SkinStep[] =>
  fenceIds.length === 0
    ? []
    : [
        {
          title: `Draw the fillets along ${fenceIds.join(", ")}, ${formatNumber(filletMm, 0)} mm in radius, with thickened resin`,
          why: "Cloth does not lie down in a sharp corner. Glassed over while it is wet, a fillet is one with the skin.",
          patchIds: [],
        },
      ];

/** Fillets of fences that are bonded to the finished skin: their cloth ends at the floor, and strips tie them to it. */
const skinFillets = (fenceIds: readonly string[], filletMm: number): readonly SkinStep[] =>
  fenceIds.length === 0
    ? []
    : [
        {
          title: `Draw the fillets along ${fenceIds.join(", ")}, ${formatNumber(filletMm, 0)} mm in radius, with thickened resin, and lay a strip cut on the bias over each while it is wet, 50 mm onto fence and floor`,
          why: "The cloth of a fence that stands on the finished skin ends at the floor: the strips tie it down.",
          patchIds: [],
        },
      ];

function cureSteps(project: Project): readonly SkinStep[] {
  const { resin, shopCelsius, peelPlyKgPerM2 } = laminateOf(project);
  if (resin === undefined) return [];
  const peel = peelPlyKgPerM2 > 0 ? "; peel ply stays on until something is bonded there or all is done" : "";
  return [
    {
      title: `Let it cure for about ${formatNumber(Math.ceil(solidHours(resin, shopCelsius)), 0)} h at ${formatNumber(shopCelsius, 0)} °C, before the next session, turning over or any load${peel}`,
      why: "Until it is solid it dents, creeps and lets the foam spring back. The resin's data sheet comes before this figure.",
      patchIds: [],
    },
  ];
}

function plyStep(patches: readonly SkinPatch[], ply: number): SkinStep {
  const own = patches.filter((patch) => patch.ply === ply && patch.zoneId === undefined);
  return {
    title: `Lay ply ${ply} and wet it out: ${own.map(({ id }) => id).join(", ")}`,
    why:
      ply === 1
        ? "With roller and squeegee from the middle of each piece to its edges, until no white shows and no resin stands on it; where two pieces meet the later one laps over while both are wet."
        : "On the ply below while it is wet: then they are one. Its seams lie beside those below.",
    patchIds: own.map(({ id }) => id),
  };
}

/** Reinforcement comes on the last ply while that is wet, the largest piece first. */
const zoneSteps = ({ zones }: SkinFace, patches: readonly SkinPatch[]): readonly SkinStep[] =>
  zones.flatMap((zone): readonly SkinStep[] => {
    const own = patches.filter(({ zoneId }) => zoneId === zone.id);
    if (own.length === 0) return [];
    const named = zone.name === "" ? zone.id : `${zone.id}, ${zone.name}`;
    const cured =
      zone.onCured.length > 0
        ? ` Before, strip the peel ply and abrade where it reaches onto ${zone.onCured.join(", ")}, which is cured.`
        : "";
    return [
      {
        title:
          `Lay the reinforcement ${named}, wet on wet: ${own.map(({ id }) => id).join(", ")}.${cured}`.replace(
            /\.$/,
            "",
          ),
        why: "The largest first, each further one inside the one below: the load goes over in steps, and no edge stands proud.",
        patchIds: own.map(({ id }) => id),
      },
    ];
  });

const peelStep = ({ joinedLater }: SkinSession): SkinStep => ({
  title:
    joinedLater.length > 0
      ? `Lay peel ply over all of it, down to the border with ${joinedLater.join(", ")}`
      : "Lay peel ply over all of it",
  why: "It takes the surplus and leaves a face that the next session, a fence or a mount bonds to.",
  patchIds: [],
});
