import { flatLengthMm, loopsAreaMm2 } from "./flat-loops.ts";
import type { FlatLoop, Part } from "./types.ts";

/** The outline of a part as it comes to lie under the skins: its foam and what is let in along its edges; flat frame. */
export const finishedLoops = ({ loops, finished }: Pick<Part, "loops" | "finished">): readonly FlatLoop[] =>
  finished ?? loops;

/** The area of the strips that are glued along the edges of a part, mm²; of flanges that are let in, none. */
export function insertAreaMm2({
  loops,
  finished,
  flatAreaMm2,
}: Pick<Part, "loops" | "finished" | "flatAreaMm2">): number {
  if (!finished) return 0;
  const edges = loops.flatMap((loop) => loop.edges);
  const widthOf = (of: "insert" | "flange") =>
    edges.reduce(
      (sum, { letIn, points }) => (letIn?.of === of ? sum + letIn.widthMm * flatLengthMm(points) : sum),
      0,
    );
  const [inserts, flanges] = [widthOf("insert"), widthOf("flange")];
  const letInMm2 = loopsAreaMm2(finished) - flatAreaMm2;
  return inserts === 0 ? 0 : (letInMm2 * inserts) / (inserts + flanges);
}
