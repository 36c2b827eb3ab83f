import { at, distanceSpace } from "../foundation/index.ts";
import { type LyingSheet, spotOnEdge } from "../surfaces/index.ts";
import type { CutChoice, FoldCut } from "./cut-of-fold.ts";
import type { Candidate } from "./find-partner.ts";
import { type Look, neighbourOf } from "./look-along.ts";
import type { SheetJoint } from "./sheet-joint.ts";
import type { JointStation } from "./types.ts";

/** Runs of looks along one neighbour; a single look is no run. */
export function runsOf(looks: readonly Look[]): readonly (readonly Look[])[] {
  const runs: Look[][] = [];
  for (const look of looks) {
    if (!look.partner) continue;
    const last = runs.at(-1)?.at(-1);
    if (last && neighbourOf(last) === neighbourOf(look) && isNext(looks, last, look)) runs.at(-1)?.push(look);
    else runs.push([look]);
  }
  return runs.filter((run) => run.length > 1);
}

const isNext = (looks: readonly Look[], a: Look, b: Look): boolean =>
  looks.indexOf(b) === looks.indexOf(a) + 1;

/** The joint along a run of looks: its stations by length, and how it is cut. */
export function jointOf(
  sheet: LyingSheet,
  edgeId: string,
  run: readonly Look[],
  cutAt: (look: Look) => FoldCut,
  cuts: ReadonlyMap<Candidate, { readonly choice: CutChoice }>,
): Omit<SheetJoint, "kind"> {
  const candidate = neighbourOf(at(run, 0));
  const stations: JointStation[] = [];
  let alongMm = 0;
  run.forEach((look, i) => {
    const before = run[i - 1];
    const stepMm = before?.edge === look.edge ? lengthBetween(sheet, before, look) : 0;
    alongMm += stepMm;
    const { bevelRad, setBackMm } = cutAt(look);
    if (before && stepMm < 1e-6 && Math.abs(before.foldRad - look.foldRad) < 1e-6) return;
    stations.push({ alongMm, at: look.point, foldRad: look.foldRad, bevelRad, setBackMm });
  });
  const [from, to] = [at(run, 0).point, at(run, -1).point];
  const kinds = run.map((look) => cutAt(look).cut);
  const through = run.map((look) => cutAt(look).through).find((side) => side !== undefined);
  const chosen = candidate && cuts.get(candidate)?.choice.cut;
  return {
    sheets: [sheet, candidate?.sheet ?? sheet],
    edgeIds: [edgeId, candidate?.edgeId ?? edgeId],
    ...(candidate?.isImage && { isWithImage: true }),
    lengthMm: alongMm,
    cut: kinds.includes("butt") ? "butt" : (chosen ?? at(kinds, 0)),
    ...(through !== undefined && { through }),
    stations,
    from: { x: from.x, y: from.y },
    to: { x: to.x, y: to.y },
  };
}

/** The length of an edge between two looks at it: chords and half chords, extrapolated (Richardson 1911). */
function lengthBetween(sheet: LyingSheet, a: Look, b: Look): number {
  const step = (b.share - a.share) / LENGTH_STEPS;
  let [fine, coarse] = [0, 0];
  let from = a.point;
  for (let i = 0; i < LENGTH_STEPS; i++) {
    const middle = spotOnEdge(sheet, a.edge, a.share + (i + 0.5) * step).point;
    const to = i === LENGTH_STEPS - 1 ? b.point : spotOnEdge(sheet, a.edge, a.share + (i + 1) * step).point;
    fine += distanceSpace(from, middle) + distanceSpace(middle, to);
    coarse += distanceSpace(from, to);
    from = to;
  }
  return fine + (fine - coarse) / 3;
}

const LENGTH_STEPS = 2;
