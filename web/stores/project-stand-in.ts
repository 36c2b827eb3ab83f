import type { Command, Project } from "../../core/project/index.ts";

/** Stand-in until core/project has commands; goes away with them. */
export function applyCommand(project: Project, command: Command): Project {
  if (command.kind === "change-settings") return { ...project, ...command.changes };
  if (command.kind === "add-section") {
    const profiles = command.profile ? [...project.profiles, command.profile] : project.profiles;
    return { ...project, profiles, items: [...project.items, command.section] };
  }
  return project;
}
