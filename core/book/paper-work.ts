import { type EdgeMark, edgeMarks } from "../marking/index.ts";
import type { Design } from "./design.ts";
import type { Piece } from "./piece.ts";
import { type PlannedTemplates, planTemplates } from "./plan-templates.ts";
import { templatePieces } from "./template-pieces.ts";

/** What book, templates and drawings of single pieces are all made from; made once where several of them are. */
export interface PaperWork {
  /** The marks on the edges of all strips. */
  readonly marks: readonly EdgeMark[];
  /** Everything that is drawn true to size. */
  readonly pieces: readonly Piece[];
  /** How the templates lie on their pages. */
  readonly templates: PlannedTemplates;
}

/** The work that all paper of a design has in common. */
export function paperWork(design: Design): PaperWork {
  const pieces = templatePieces(design);
  return { marks: edgeMarks(design), pieces, templates: planTemplates(design, pieces) };
}
