import { assertNever, wordProblem } from "../../core/foundation/index.ts";
import {
  applyCommand,
  type Command,
  copiesOf,
  cuttingOf,
  type Grip,
  gripsOfCopies,
  leftOfCentreMm,
  type Motion,
  offsetLine,
  type Project,
  repeatCommands,
} from "../../core/project/index.ts";
import type { Lengths } from "../lengths/index.ts";
import type { EditTask } from "./edit-store.ts";

/** What a task comes to: the commands and what is chosen after them, or why it cannot be. */
export type PlannedEdit =
  | {
      readonly ok: true;
      readonly commands: readonly Command[];
      readonly chosen: readonly Grip[];
      readonly note?: string;
    }
  | { readonly ok: false; readonly words: string };

const MOST_COPIES = 50;

/** The commands that a task asks for, on what is chosen. Nothing is changed. */
export function planEdit(
  project: Project,
  grips: readonly Grip[],
  task: EditTask,
  lengths: Lengths,
): PlannedEdit {
  switch (task.kind) {
    case "move": {
      const all = task.profiles === "go along" ? [...grips, ...profilesUnder(project, grips)] : grips;
      const byMm = { x: task.x, y: task.y, z: task.z };
      return planMotion(project, all, { kind: "move", byMm }, { makes: "itself", chosen: grips, lengths });
    }
    case "turn": {
      const motion: Motion = {
        kind: "turn",
        about: { x: task.x, y: task.y },
        angleRad: (task.degrees * Math.PI) / 180,
      };
      return planMotion(project, grips, motion, { makes: "itself", chosen: grips, lengths });
    }
    case "scale": {
      if (!(task.percent > 0)) return { ok: false, words: "Type a size over 0 %." };
      const motion: Motion = {
        kind: "scale",
        about: { x: task.x, y: task.y },
        factor: task.percent / 100,
      };
      return planMotion(project, grips, motion, { makes: "itself", chosen: grips, lengths });
    }
    case "mirror": {
      const motion: Motion = { kind: "mirror", across: task.across, atMm: task.atMm };
      return planMotion(project, grips, motion, { makes: task.makes, chosen: grips, lengths });
    }
    case "repeat":
      return planRow(project, grips, task);
    case "parallel":
      return planParallel(project, grips, task);
    default:
      return assertNever(task);
  }
}

/** The profiles that chosen sections are bent by, and that are not chosen themselves. */
export function profilesUnder(project: Project, grips: readonly Grip[]): readonly Grip[] {
  const chosen = new Set(grips.flatMap(({ line }) => (line.of === "profile" ? [line.profileId] : [])));
  const ids = grips.flatMap(({ line, nodeId }) => {
    const item = nodeId === undefined && line.of === "item" ? itemOf(project, line.itemId) : undefined;
    return item?.kind === "section" && !chosen.has(item.profileId) ? [item.profileId] : [];
  });
  return [...new Set(ids)].map((profileId) => ({ line: { of: "profile", profileId } }));
}

interface MotionSettings {
  readonly makes: "copy" | "itself";
  readonly chosen: readonly Grip[];
  readonly lengths: Lengths;
}

function planMotion(
  project: Project,
  grips: readonly Grip[],
  motion: Motion,
  { makes, chosen, lengths }: MotionSettings,
): PlannedEdit {
  const leftMm = leftOfCentreMm(project, grips, motion);
  if (leftMm > 0) {
    const far = `${lengths.show(leftMm)} ${lengths.unit}`;
    return {
      ok: false,
      words: `That lies ${far} left of the centre line. Draw on the right; the left is its image.`,
    };
  }
  if (makes === "itself") return { ok: true, commands: [{ kind: "transform", grips, motion }], chosen };
  const wholes = grips.filter(({ nodeId }) => nodeId === undefined);
  if (wholes.length === 0) return { ok: false, words: "A copy is made of whole things, not of nodes." };
  const copies = copiesOf(project, cuttingOf(project, wholes), motion);
  return { ok: true, commands: [{ kind: "add-copies", copies }], chosen: gripsOfCopies(copies) };
}

function planRow(
  project: Project,
  grips: readonly Grip[],
  { count, x, y }: Extract<EditTask, { kind: "repeat" }>,
): PlannedEdit {
  const wholes = grips.filter(({ nodeId }) => nodeId === undefined);
  if (wholes.length === 0) return { ok: false, words: "A row is made of whole things, not of nodes." };
  if (!Number.isInteger(count) || count < 1 || count > MOST_COPIES)
    return { ok: false, words: `Type how many more there are to be, from 1 to ${MOST_COPIES}.` };
  if (x === 0 && y === 0) return { ok: false, words: "Type how far each stands from the last." };
  const byMm = { x: x * count, y: y * count, z: 0 };
  if (leftOfCentreMm(project, wholes, { kind: "move", byMm }) > 0)
    return {
      ok: false,
      words: "The row would go left of the centre line. Take fewer, or a smaller spacing.",
    };
  const commands = repeatCommands(project, wholes, { count, spacingMm: { x, y } });
  const added = commands.flatMap(({ copies }) => gripsOfCopies(copies));
  return { ok: true, commands, chosen: [...wholes, ...added] };
}

function planParallel(
  project: Project,
  grips: readonly Grip[],
  { distanceMm, makes }: Extract<EditTask, { kind: "parallel" }>,
): PlannedEdit {
  const [grip, ...more] = grips;
  if (!grip || more.length > 0 || (grip.line.of !== "item" && grip.line.of !== "opening"))
    return { ok: false, words: "Choose one outline or one fence to draw the parallel of." };
  const result = offsetLine(project, grip.line, distanceMm);
  if (!result.ok) {
    const [problem] = result.problems;
    return { ok: false, words: problem ? wordProblem(problem) : "This has no outline or line of its own." };
  }
  const { missMm } = result.value;
  const note =
    missMm > 0 ? `Curves keep the distance within ${missMm < 0.1 ? "0.1" : missMm.toFixed(1)} mm.` : "";
  const whole: Grip = { line: grip.line };
  if (makes === "itself") {
    const own: Command = { kind: "offset-line", line: grip.line, distanceMm };
    return checked(project, [own], [whole], note);
  }
  const copies = copiesOf(project, cuttingOf(project, [whole]));
  const [copy] = gripsOfCopies(copies);
  if (!copy) return { ok: false, words: "This cannot be copied." };
  const commands: readonly Command[] = [
    { kind: "add-copies", copies },
    { kind: "offset-line", line: copy.line, distanceMm },
  ];
  return checked(project, commands, [copy], note);
}

function checked(
  project: Project,
  commands: readonly Command[],
  chosen: readonly Grip[],
  note: string,
): PlannedEdit {
  const after = commands.reduce(applyCommand, project);
  const stays: Motion = { kind: "move", byMm: { x: 0, y: 0, z: 0 } };
  return leftOfCentreMm(after, chosen, stays) > 0
    ? { ok: false, words: "The parallel would lie left of the centre line. Take a smaller distance." }
    : { ok: true, commands, chosen, ...(note === "" ? {} : { note }) };
}

const itemOf = (project: Project, itemId: string) => project.items.find(({ id }) => id === itemId);
