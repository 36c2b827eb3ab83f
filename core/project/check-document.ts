import type { Problem } from "../foundation/index.ts";
import { checkItems } from "./check-items.ts";
import { checkMaterials } from "./check-materials.ts";
import { checkRemarks } from "./check-remarks.ts";
import { checkSettings } from "./check-settings.ts";
import { checkPanels } from "./panels.ts";
import type { Project } from "./schema.ts";

/**
 * Everything typed wrong in a document, as problems that name it: numbers out of their range, names of things
 * that are not there, ids that come twice, nodes left of the centre line. What needs a compiled curve to be
 * seen is told by `resolveLines` instead.
 */
export function checkDocument(project: Project): readonly Problem[] {
  const materials = checkMaterials(project);
  const settings = checkSettings(materials.sound);
  const nothing: readonly Problem[] =
    project.items.length === 0 ? [{ kind: "nothing-drawn", place: {}, name: project.title }] : [];
  return [
    ...nothing,
    ...settings.problems,
    ...materials.problems,
    ...checkItems(project).problems,
    ...checkPanels(project),
    ...checkRemarks(project).problems,
  ];
}

/**
 * The document to compute with: settings and materials that `checkDocument` faults at their defaults, faulty
 * stock, notes and pictures, and things whose id or number is taken left out. Items that cannot be made stay, so that others may
 * follow their edges; `resolveLines` gives no line for them.
 */
export function soundProject(project: Project): Project {
  const { sound } = checkSettings(checkMaterials(project).sound);
  const { repeatedItems, repeatedProfiles, repeatedOpenings } = checkItems(project);
  const { notes, underlays } = checkRemarks(project);
  return {
    ...sound,
    notes,
    underlays,
    items: sound.items.filter((_, index) => !repeatedItems.has(index)),
    openings: sound.openings.filter((_, index) => !repeatedOpenings.has(index)),
    profiles: sound.profiles.filter((_, index) => !repeatedProfiles.has(index)),
  };
}
