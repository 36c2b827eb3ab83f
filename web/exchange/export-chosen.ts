import { linesAsCsv, linesAsSvg, type OutgoingLine } from "../../core/exchange/index.ts";
import { download, fileNameOf } from "../files/index.ts";
import { contextNow } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import { chosenOwnersOf, type DrawingView, ownerKey, type Scene, type Selection } from "../tools/index.ts";

/** The chosen lines of one view, ready to go out. */
export interface Outgoing {
  readonly view: DrawingView;
  readonly lines: readonly OutgoingLine[];
}

/** Every line of what is chosen, plan and side view apart; broken lines stay behind. */
export function chosenLines(scene: Scene, selection: Selection | undefined): readonly Outgoing[] {
  const owners = new Set(chosenOwnersOf(selection));
  return (["plan", "side"] as const).flatMap((view): readonly Outgoing[] => {
    const lines = scene.lines
      .filter((line) => line.view === view && !line.broken && owners.has(ownerKey(line.line)))
      .map(({ name, closed, edges }) => ({
        name,
        closed,
        pieces: edges.flatMap(({ stretches }) => stretches.map(({ piece }) => piece)),
      }))
      .filter(({ pieces }) => pieces.length > 0);
    return lines.length > 0 ? [{ view, lines }] : [];
  });
}

/** Whether anything chosen has a line. */
export const canExport = (): boolean => outgoingNow().length > 0;

/** Hands over what is chosen as SVG, a file for each view. */
export const exportSvg = (): void =>
  handOver("svg", "image/svg+xml", ({ view, lines }) => linesAsSvg(`${titleNow()}, ${view}`, lines));

/** Hands over what is chosen as points in CSV, a file for each view. */
export const exportCsv = (): void =>
  handOver("csv", "text/csv", ({ view, lines }) => linesAsCsv(lines, ["x", view === "plan" ? "y" : "z"]));

function handOver(ending: string, type: string, write: (outgoing: Outgoing) => string): void {
  for (const outgoing of outgoingNow()) {
    const [first] = outgoing.lines;
    const name = outgoing.lines.length === 1 && first ? first.name : titleNow();
    download(new Blob([write(outgoing)], { type }), `${fileNameOf(`${name} ${outgoing.view}`)}.${ending}`);
  }
}

function outgoingNow(): readonly Outgoing[] {
  const { scene, selection } = contextNow();
  return chosenLines(scene, selection);
}

const titleNow = (): string => useDocument.getState().project.title;
