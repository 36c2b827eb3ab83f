import { formatNumber } from "../foundation/index.ts";
import { dewPointCelsius } from "../laminate/index.ts";
import { laminateOf, type Project } from "../project/index.ts";
import { patchesOfSession } from "./patches-of-session.ts";
import { ABOVE_DEW_POINT_CELSIUS } from "./shop-problems.ts";
import type { SkinFace, SkinFaceName, SkinPatch, SkinSession, SkinStep } from "./types.ts";
import { FLANGE_STEP } from "./word-edges.ts";

/** What of the tray the steps follow from: the fences that are glued to the core, and whether free edges of sheets have a flange. */
export interface StepGround {
  readonly fencesOnCore: ReadonlySet<string>;
  readonly hasFlange: boolean;
}

/** Whether a face is laid when the tray has been turned over: upright, its upper face comes first. */
export const isLaidSecond = (face: SkinFaceName, attitude: Project["jig"]["attitude"]): boolean =>
  face !== "fence sides" && (face === "upper face") === (attitude === "inverted");

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
  const isFirst = face.sessions[0]?.id === session.id;
  const wetted = session.areaMm2 / 1e6;
  const isSecond = isLaidSecond(face.face, project.jig.attitude);
  return [
    ...(isFirst && isSecond && hasFlange ? [{ ...FLANGE_STEP, patchIds: [] }] : []),
    readyStep(face, isFirst, project),
    ...(preWetKgPerM2 > 0
      ? [
          {
            title: `Wet the bare foam: about ${formatNumber(1000 * preWetKgPerM2 * wetted, 0)} g over ${formatNumber(wetted, 2)} m², until it is evenly dull`,
            why: "Dry foam drinks from the cloth, and the cloth then stays white and does not hold.",
            patchIds: [],
          },
        ]
      : []),
    ...(face.face === "fence sides" && filletMm > 0 && fencesOnCore.size > 0
      ? [
          {
            title: `Draw the fillets along the fences that are glued on, ${formatNumber(filletMm, 0)} mm in radius, with thickened resin`,
            why: "Cloth does not lie down in a sharp corner. Glassed over while it is wet, a fillet is one with the skin.",
            patchIds: [],
          },
        ]
      : []),
    ...face.plies.map((_, ply) => plyStep(patches, ply + 1)).filter(({ patchIds }) => patchIds.length > 0),
    ...zoneSteps(face, patches),
    ...(peelPlyKgPerM2 > 0 ? [peelStep(session)] : []),
    {
      title: "Leave it, and look at it after half an hour",
      why: "Nothing is worked after it has begun to gel: a lifted edge is pressed down while it is still wet, or ground back when it is hard.",
      patchIds: [],
    },
  ];
}

function readyStep(face: SkinFace, isFirst: boolean, project: Project): SkinStep {
  const { shopCelsius, humidityShare } = laminateOf(project);
  const least = dewPointCelsius(shopCelsius, humidityShare) + ABOVE_DEW_POINT_CELSIUS;
  const air = `The shop is steady or cooling, never warming; the foam is above ${formatNumber(least, 1)} °C (at ${formatNumber(shopCelsius, 0)} °C and ${formatNumber(100 * humidityShare, 0)} % humidity)`;
  if (!isFirst)
    return {
      title: `Make the border ready: strip the peel ply beside this session, abrade with 80 grit until dull where it was missed or waited too long, vacuum. ${air}`,
      why: "Cloth bonds to cured cloth only where that is clean and rough. Warming foam blows bubbles; water on it keeps the resin from curing clear.",
      patchIds: [],
    };
  const carrier = face.face === "fence sides" ? "fences" : "foam";
  return {
    title: `Make the ${carrier} ready: knock down glue that stands proud, round outside corners, vacuum; joints glued with mist have dried for a day. ${air}`,
    why: "Cloth bridges over a ridge and lifts off a sharp corner. Warming foam blows bubbles into the skin; water on it keeps the resin from curing clear.",
    patchIds: [],
  };
}

function plyStep(patches: readonly SkinPatch[], ply: number): SkinStep {
  const own = patches.filter((patch) => patch.ply === ply && patch.zoneId === undefined);
  return {
    title: `Lay ply ${ply} and wet it out: ${own.map(({ id }) => id).join(", ")}`,
    why:
      ply === 1
        ? "From the middle of each piece to its edges, so that no air is shut in; where two pieces meet the later one laps over while both are wet."
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
