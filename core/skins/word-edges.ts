import { formatMass, formatMm, formatNumber, toDegrees } from "../foundation/index.ts";
import type { EdgeFinish } from "../project/index.ts";
import type { Fillet, FinishedEdges, OutsideCorner, SkinPlan } from "./types.ts";

/** What a finish is called where it is chosen. */
export const FINISH_NAMES: Readonly<Record<EdgeFinish, string>> = {
  wrapped: "square, rounded and wrapped",
  flange: "chamfered to a solid flange",
  insert: "hard insert",
  trimmed: "trimmed and sealed",
};

/** What is done at the edges of one finish, in order. */
function workOf({ finish, ...edges }: FinishedEdges): string {
  switch (finish) {
    case "wrapped":
      return "round both arrises for the cloth; the face that is laid first ends flush, the second one closes round the edge and 25 mm onto the first, each ply 10 mm short of the one below; abrade what it laps onto.";
    case "flange":
      return flangeWork(edges);
    case "insert":
      return `the pattern ends ${formatMm(edges.widthMm)} mm inside the drawn edge. Before the skins glue a strip of hardwood or solid laminate there, ${formatMm(edges.widthMm)} mm wide and as thick as the foam (${edges.thicknessesMm.map(formatMm).join(", ")} mm), mitred at the corners, flush with both faces, held down on the ribs until it bears load. Both faces end on it.`;
    case "trimmed":
      return "lay both faces 20 mm past the edge, cut them off flush, knife at the rubbery stage or saw when hard, then seal the foam with thickened resin: water that gets in there lifts the skins.";
  }
}

function flangeWork({
  widthMm,
  chamferRun,
  areOnFences,
  areOnSheets,
}: Omit<FinishedEdges, "finish">): string {
  const width = formatMm(widthMm);
  const run = formatNumber(chamferRun, 1).replace(/\.0$/, "");
  const onSheets = `lay the first face over the foam and 20 mm past its edge. Turned over, knife the foam off that skin from the drawn edge to ${width} mm inside it, chamfer it ${run} to 1 behind, abrade and wipe the bare skin, and lay the second face down the chamfer onto it; trim both to the drawn edge when they are hard.`;
  const onFences = `on fences the pattern ends ${width} mm inside the drawn edge: chamfer it from both sides to the middle, ${run} to 1, lay both sides past it, press them together between waxed battens while they are wet, and trim to the drawn edge when they are hard.`;
  return [...(areOnSheets ? [onSheets] : []), ...(areOnFences ? [onFences] : [])].join(" And ");
}

/** The free edges by finish: how long, and what is done. */
export const edgeWords = (edges: FinishedEdges): string =>
  `${formatNumber(edges.lengthMm / 1000, 2)} m of free edges ${FINISH_NAMES[edges.finish]}: ${workOf(edges)}`;

/** What the second face begins with where edges have a flange. */
export const FLANGE_STEP = {
  title:
    "Along flanges: knife the foam off the first skin, chamfer it behind, abrade the bare skin until it is dull, vacuum",
  why: "There both skins lie on each other as solid laminate. Cut foam and never into the skin under it; foam that stays on shows as a soft edge.",
} as const;

/** The fillets in one sentence a kind: how long and how much thickened resin. */
export function filletWords({ fillets }: Pick<SkinPlan, "fillets">): readonly string[] {
  const kinds: readonly (readonly [Fillet["between"], string])[] = [
    [
      "glued fence",
      "on both sides of the fences that are glued to the core, in the session that glasses over them, while they are wet",
    ],
    [
      "skinned fence",
      "on both sides of the fences that are bonded to the finished skin: abrade both, bond, and glass over the wet fillet with a strip on the bias, 50 mm onto fence and floor",
    ],
    ["sheets", "in the inside corners of sheets, in the session that glasses over them, while they are wet"],
  ];
  return kinds.flatMap(([kind, where]) => {
    const own = fillets.filter(({ between }) => between === kind);
    const [first] = own;
    if (!first) return [];
    const sum = (of: (fillet: Fillet) => number) => own.reduce((total, fillet) => total + of(fillet), 0);
    return [
      `Fillets of ${formatMm(first.radiusMm)} mm radius ${where}: ${formatNumber(sum(({ lengthMm }) => lengthMm) / 1000, 2)} m, ${formatMass(sum(({ massKg }) => massKg))} of thickened resin.`,
    ];
  });
}

/** An outside corner in one sentence. */
export const cornerWords = ({ jointId, foldRad, radiusMm, offMm }: OutsideCorner): string =>
  `Outside corner at ${jointId}, folding ${formatNumber(toDegrees(foldRad), 0)}°: round it to ${formatMm(radiusMm)} mm for this cloth. The made face then lies ${formatNumber(offMm, 2)} mm inside the drawn edge.`;
