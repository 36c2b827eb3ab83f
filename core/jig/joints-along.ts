import { endsOf, type Stretch } from "./crossing-rib.ts";
import type { JigPiece } from "./jig-piece.ts";
import type { SeamLine } from "./seam-lines.ts";

/** A joint or seam that runs along in a rib's board. */
export interface JointAlong {
  readonly stretch: Stretch;
  readonly between: readonly [string, string];
}

/** The board is looked over this often, mm; a joint that runs in it for less crosses it. */
const STEP_MM = 5;
const LEAST_MM = 40;

/**
 * Joints and seams that run along a rib within its thickness, from where to where: there another part lies over the far face
 * than over the station face, or a seam of the part lies between both.
 */
export function jointsAlong(
  piece: Pick<JigPiece, "runs" | "body" | "choice" | "restAt" | "top">,
  seams: readonly SeamLine[],
): readonly JointAlong[] {
  const [fromMm, toMm] = endsOf(piece);
  const thickMm = piece.body[1] - piece.body[0];
  const found: { from: number; to: number; between: readonly [string, string] }[] = [];
  const steps = Math.max(1, Math.ceil((toMm - fromMm) / STEP_MM));
  for (let i = 0; i <= steps; i++) {
    const mm = fromMm + ((toMm - fromMm) * i) / steps;
    const between = borderOver(piece, mm, thickMm) ?? seamOver(piece, mm, seams);
    if (!between) continue;
    const last = found[found.length - 1];
    const isSame = last && last.between.join() === between.join() && mm - last.to < 2 * STEP_MM;
    if (isSame) last.to = mm;
    else found.push({ from: mm, to: mm, between });
  }
  return found
    .filter(({ from, to }) => to - from >= LEAST_MM)
    .map(({ from, to, between }) => ({ stretch: [from, to], between }));
}

function borderOver(
  { restAt, choice }: Pick<JigPiece, "restAt" | "choice">,
  alongMm: number,
  thickMm: number,
): readonly [string, string] | undefined {
  const [near, far] = [restAt(0, alongMm), restAt(choice.side * thickMm, alongMm)];
  return near && far && near.partId !== far.partId ? [near.partId, far.partId] : undefined;
}

/** The part of which a seam runs through the board at a place. */
function seamOver(
  { runs, body, restAt }: Pick<JigPiece, "runs" | "body" | "restAt">,
  alongMm: number,
  seams: readonly SeamLine[],
): readonly [string, string] | undefined {
  const partId = restAt(0, alongMm)?.partId;
  const [across, along] = runs === "across" ? (["x", "y"] as const) : (["y", "x"] as const);
  const isIn = seams.some(
    (seam) =>
      seam.partId === partId &&
      seam.line.slice(1).some((to, i) => {
        const from = seam.line[i] ?? to;
        const [a, b] = [from[along] - alongMm, to[along] - alongMm];
        if (a * b > 0 || a === b) return false;
        const mm = from[across] + (a / (a - b)) * (to[across] - from[across]);
        return mm >= body[0] && mm <= body[1];
      }),
  );
  return partId !== undefined && isIn ? [partId, partId] : undefined;
}

/** Under a joint that runs along, the top is hollow for so long, and the foam stands on so much between two hollows, mm. */
const HOLLOW_MM = 80;
const LAND_MM = 20;

/** The middles and widths of the hollows under a joint that runs along a rib, with land to stand on between them. */
export function hollowsAlong([fromMm, toMm]: Stretch): readonly {
  readonly atMm: number;
  readonly widthMm: number;
}[] {
  const lengthMm = toMm - fromMm;
  const count = Math.max(1, Math.round((lengthMm + LAND_MM) / (HOLLOW_MM + LAND_MM)));
  const widthMm = (lengthMm + LAND_MM) / count - LAND_MM;
  return Array.from({ length: count }, (_, i) => ({
    atMm: fromMm + i * (widthMm + LAND_MM) + widthMm / 2,
    widthMm,
  }));
}
