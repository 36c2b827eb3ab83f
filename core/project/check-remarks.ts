import { LARGEST_COORDINATE_MM, type Problem, type ProblemPlace, toDegrees } from "../foundation/index.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import { nameOfNote, nameOfUnderlay } from "./names.ts";
import { pinPlace } from "./pin-place.ts";
import type { Note, Project, Underlay, ViewPoint } from "./schema.ts";

/** What was typed wrong on notes and on pictures under the drawing, and those that can be drawn in spite of it. */
export interface CheckedRemarks {
  readonly problems: readonly Problem[];
  readonly notes: readonly Note[];
  readonly underlays: readonly Underlay[];
}

/** Checks every note and every picture under the drawing: ids, numbers, and whether a pin's node is there. */
export function checkRemarks(project: Project): CheckedRemarks {
  const problems: Problem[] = [];
  const isSound = <Thing>(things: readonly Thing[], check: (thing: Thing) => readonly Problem[]) =>
    things.filter((thing) => {
      const found = check(thing);
      problems.push(...found);
      return found.length === 0;
    });
  const notes = isSound(project.notes, (note) => [
    ...checkId(project.notes, note, { noteId: note.id }, nameOfNote(note)),
    ...checkNote(project, note),
  ]);
  const underlays = isSound(project.underlays, (underlay) => [
    ...checkId(project.underlays, underlay, { underlayId: underlay.id }, nameOfUnderlay(underlay)),
    ...checkUnderlay(underlay),
  ]);
  return { problems, notes, underlays };
}

function checkId(
  list: readonly { readonly id: string }[],
  thing: { readonly id: string },
  place: ProblemPlace,
  name: string,
): readonly Problem[] {
  const isFirst = list.find(({ id }) => id === thing.id) === thing;
  return isFirst ? [] : [{ kind: "duplicate-id", place, name, field: "id", id: thing.id }];
}

const PLACE: Range = { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM };

function checkNote(project: Project, note: Note): readonly Problem[] {
  const owner = { name: nameOfNote(note), place: { noteId: note.id } };
  const problems = [
    ...checkNumber(owner, "Width", note.widthMm, RANGES.noteWidthMm),
    ...checkPlace(owner, "Leader", note.leader),
    ...(note.pin.kind === "place" ? checkPlace(owner, "Pin", note.pin.at) : []),
  ];
  if (problems.length === 0 && !pinPlace(project, note))
    return [{ kind: "pin-without-node", ...owner, nodeId: note.pin.kind === "node" ? note.pin.nodeId : "" }];
  return problems;
}

function checkUnderlay(underlay: Underlay): readonly Problem[] {
  const owner = { name: nameOfUnderlay(underlay), place: { underlayId: underlay.id } };
  return [
    ...checkNumber(owner, "Width in pixels", underlay.widthPx, RANGES.picturePx),
    ...checkNumber(owner, "Height in pixels", underlay.heightPx, RANGES.picturePx),
    ...checkNumber(owner, "Millimetres a pixel", underlay.mmPerPx, RANGES.mmPerPx),
    ...checkNumber(owner, "Turn in degrees", toDegrees(underlay.turnRad), RANGES.tangentDegrees),
    ...checkNumber(owner, "Strength", underlay.opacity, RANGES.opacity),
    ...checkPlace(owner, "Corner", underlay.origin),
  ];
}

interface Owner {
  readonly name: string;
  readonly place: ProblemPlace;
}

const checkPlace = (owner: Owner, field: string, at: ViewPoint): readonly Problem[] => [
  ...checkNumber(owner, `${field} along`, at.x, PLACE),
  ...checkNumber(owner, `${field} up`, at.up, PLACE),
];

const checkNumber = (owner: Owner, field: string, value: number, range: Range): readonly Problem[] =>
  isWithin(value, range) ? [] : [{ kind: "number-out-of-range", ...owner, field, value, ...range }];
