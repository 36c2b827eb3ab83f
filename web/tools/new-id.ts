import type { LineRef, PlanElement, Project, SideNode } from "../../core/project/index.ts";
import { elementsOfLine } from "./elements-of-line.ts";

/** The next free id of a kind: the letter and one more than the highest number in use, so that none comes twice. */
export function newId(letter: string, used: readonly string[]): string {
  const numbers = used.map((id) => (id.startsWith(letter) ? Number(id.slice(letter.length)) : Number.NaN));
  return `${letter}${Math.max(0, ...numbers.filter((number) => Number.isInteger(number))) + 1}`;
}

/** The ids that a new node of a line must not have: those of the line, and of a transition's other edge. */
export function takenIds(project: Project, line: LineRef): readonly string[] {
  if (line.of !== "edge") return idsOf(elementsOfLine(project, line));
  const sides = ["first", "second"] as const;
  return sides.flatMap((side) => idsOf(elementsOfLine(project, { ...line, side })));
}

/** The ids of a line's nodes, followed pieces and depths. */
export const idsOf = (elements: readonly (PlanElement | SideNode)[]): readonly string[] =>
  elements.map((element) => element.id);

export const itemIdsOf = (project: Project): readonly string[] => project.items.map((item) => item.id);
export const openingIdsOf = (project: Project): readonly string[] =>
  project.openings.map((opening) => opening.id);
export const profileIdsOf = (project: Project): readonly string[] =>
  project.profiles.map((profile) => profile.id);
