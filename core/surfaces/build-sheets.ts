import type { Problem } from "../foundation/index.ts";
import type { Project, ResolvedLines } from "../project/index.ts";
import { fenceSheet } from "./fence-sheet.ts";
import { sectionSheets } from "./section-sheets.ts";
import type { CornerFold, SectionSheet, Sheet } from "./types.ts";

/**
 * Every sheet of the tray, sections before fences, in the order of the document; the folds that divide sections;
 * and a problem for each item that could not be made. An item without a usable line has its problem already.
 */
export function buildSheets(
  project: Project,
  lines: ResolvedLines,
): {
  readonly sheets: readonly Sheet[];
  readonly folds: readonly CornerFold[];
  readonly problems: readonly Problem[];
} {
  const sections: SectionSheet[] = [];
  const folds: CornerFold[] = [];
  const problems: Problem[] = [];
  for (const item of project.items) {
    if (item.kind !== "section") continue;
    const outline = lines.plan[item.id];
    const profile = lines.profiles[item.profileId];
    if (!outline?.closed || !profile) continue;
    const made = sectionSheets(project, item, outline, profile);
    sections.push(...made.sheets);
    folds.push(...made.folds);
    problems.push(...made.problems);
  }
  const sheets: Sheet[] = [...sections];
  for (const item of project.items) {
    if (item.kind !== "fence") continue;
    const line = lines.plan[item.id];
    if (!line || line.closed) continue;
    const made = fenceSheet(project, item, line, lines.lowerEdges[item.id], sections);
    if (made.sheet) sheets.push(made.sheet);
    problems.push(...made.problems);
  }
  return { sheets, folds, problems };
}
