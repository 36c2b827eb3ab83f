import type { TemplateWay } from "./paper-schemas.ts";
import type { Project } from "./schema.ts";

/** Of a document that does not say: the fewest pages that show every curve at true size. */
const DEFAULT_WAY: TemplateWay = "curves";

/** The way of every part that has none of its own. */
export const defaultTemplateWay = ({ paper }: Pick<Project, "paper">): TemplateWay =>
  paper.templateWay ?? DEFAULT_WAY;

/** The way of a part, a plate or a rib, by its code: its own, or the tray's. */
export const templateWayOf = (project: Pick<Project, "paper">, partId: string): TemplateWay =>
  project.paper.templateWays?.find((own) => own.partId === partId)?.way ?? defaultTemplateWay(project);
