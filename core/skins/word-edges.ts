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

const FINISH_WORK: Readonly<Record<EdgeFinish, string>> = {
  wrapped:
    "round both arrises for the cloth; the face that is laid first ends flush, the second one closes round the edge and 25 mm onto the first, each ply 10 mm short of the one below; abrade what it laps onto.",
  flange:
    "cut the foam back 20 mm inside the drawn edge and chamfer it 3 to 1 behind that; screw a waxed batten level with the first face, lay both faces 20 mm out over it, and trim to the drawn edge when it is hard.",
  insert:
    "cut the foam back 20 mm inside the drawn edge and glue in a strip of hardwood or solid laminate, flush with both faces, before the skins; both faces end on it.",
  trimmed:
    "lay both faces 20 mm past the edge, cut them off flush, knife at the rubbery stage or saw when hard, then seal the foam with thickened resin: water that gets in there lifts the skins.",
};

/** The free edges by finish: how long, and what is done. */
export const edgeWords = ({ finish, lengthMm }: FinishedEdges): string =>
  `${formatNumber(lengthMm / 1000, 2)} m of free edges ${FINISH_NAMES[finish]}: ${FINISH_WORK[finish]}`;

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
