import type { LaminateSettings } from "../project/index.ts";
import type { SkinFace, SkinFaceName, SkinTask } from "./types.ts";

/** Work of one pair of hands to make foam ready, minutes for a square metre; and after each session (common practice). */
const READY_MINUTES_PER_M2 = 12;
const CLEAN_UP_MINUTES = 20;
/** To tie the tray up, turn it and set it down, minutes; never by fewer than two (common practice). */
const TURN_MINUTES = 45;
const TURN_HANDS = 2;

/**
 * Skinning as tasks for a calendar, in an order that works: the face that looks up from the jig is made ready and laid
 * session by session, each on the cured edge of the one before; the tray is turned over; the face that lay on the jig
 * follows. The sides of fences go with the lower face. Work in minutes for the stated hands, cures in hours before what follows may begin. None where it is too cold.
 */
export function skinTasks(
  faces: readonly SkinFace[],
  attitude: "upright" | "inverted",
  { hands, curedHours }: Pick<LaminateSettings, "hands"> & { readonly curedHours: number },
): readonly SkinTask[] {
  const isInverted = attitude === "inverted";
  const isLower = ({ face }: SkinFace) => face !== "upper face";
  const isFirst = (face: SkinFace) => isLower(face) === isInverted;
  const first = faces.filter(isFirst);
  const second = faces.filter((face) => !isFirst(face));
  const laidFirst = chainOf(first, undefined, hands, curedHours);
  const [before] = laidFirst.slice(-1);
  if (second.length === 0 || before === undefined)
    return [...laidFirst, ...chainOf(second, undefined, hands, curedHours)];
  const turn: SkinTask = {
    id: "skin turn",
    kind: "turn over",
    title: "Turn the tray over into the cradle",
    after: [before.id],
    workMinutes: TURN_MINUTES,
    hands: TURN_HANDS,
    cureHours: 0,
  };
  return [...laidFirst, turn, ...chainOf(second, turn.id, hands, curedHours)];
}

/** Faces one after the other. */
function chainOf(
  faces: readonly SkinFace[],
  afterId: string | undefined,
  hands: number,
  curedHours: number,
): readonly SkinTask[] {
  const tasks: SkinTask[] = [];
  let before = afterId;
  for (const face of faces) {
    for (const task of tasksOf(face, hands, curedHours)) {
      tasks.push({ ...task, after: before === undefined ? [] : [before] });
      before = task.id;
    }
  }
  return tasks;
}

function tasksOf(
  { face, areaMm2, sessions }: SkinFace,
  hands: number,
  curedHours: number,
): readonly Omit<SkinTask, "after">[] {
  if (sessions.length === 0) return [];
  const ready = {
    id: `skin ${face} ready`,
    kind: "ready",
    title: `Make the ${wordFace(face)} ready`,
    workMinutes: ((areaMm2 / 1e6) * READY_MINUTES_PER_M2) / hands,
    hands,
    cureHours: 0,
  } as const;
  return [
    ready,
    ...sessions.map(({ workMinutes }, i) => ({
      id: `skin ${face} ${i + 1}`,
      kind: "session" as const,
      title: `Skin the ${wordFace(face)}, session ${i + 1} of ${sessions.length}`,
      workMinutes: workMinutes + CLEAN_UP_MINUTES,
      hands,
      cureHours: curedHours,
    })),
  ];
}

const wordFace = (face: SkinFaceName): string => (face === "fence sides" ? "sides of the fences" : face);
