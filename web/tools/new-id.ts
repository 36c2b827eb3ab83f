import type { PlanElement, Project, SideNode } from "../../core/project/index.ts";

/** The next free id of a kind: the letter and one more than the highest number in use, so that none comes twice. */
export function newId(letter: string, used: readonly string[]): string {
  const numbers = used.map((id) => (id.startsWith(letter) ? Number(id.slice(letter.length)) : Number.NaN));
  return `${letter}${Math.max(0, ...numbers.filter((number) => Number.isInteger(number))) + 1}`;
}

/** The ids of a line's nodes, followed pieces and depths. */
export const idsOf = (elements: readonly (PlanElement | SideNode)[]): readonly string[] =>
  elements.map((element) => element.id);

export const itemIdsOf = (project: Project): readonly string[] => project.items.map((item) => item.id);
export const profileIdsOf = (project: Project): readonly string[] =>
  project.profiles.map((profile) => profile.id);
