import { formatMm, formatNumber } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { mixOf, plyFigures } from "../laminate/index.ts";
import type { Part } from "../patterns/index.ts";
import { laminateOf, type Project } from "../project/index.ts";
import { type Fillet, filletArcMm } from "../skins/index.ts";
import type { PanelBond, PanelStep } from "./types.ts";

/** Thickened resin on a face that is bonded, kg/m²: a line of 0.3 mm (common practice: 0.25 to 0.40). */
const BOND_KG_PER_M2 = 0.35;
/** Work of one pair of hands on a fence that is bonded on, minutes, and for every metre of it (common practice). */
const MINUTES = { fence: 20, perM: 18, tapePerM: 12 } as const;
/** Beyond what is bonded so much more skin is made rough on each side, mm. */
const ABRADE_MORE_MM = 5;

/** What bonding is reckoned from. */
export interface BondSources {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly fillets: readonly Fillet[];
}

/**
 * Every fence that is cut from a panel as it is bonded onto the finished skin: thickened resin under its edge, a fillet on both
 * sides, and over each a tape of the panel's outer cloth cut on the bias, a lap wide on either leg.
 */
export function bondFences({ parts, joints, fillets }: BondSources, project: Project): readonly PanelBond[] {
  const { filletMm, overlapMm, wasteShare, hands, fibreMassShare } = laminateOf(project);
  return parts.flatMap(({ id, panel, thicknessMm, loops }): readonly PanelBond[] => {
    if (panel === undefined) return [];
    const own = joints.filter(({ kind, partIds }) => kind === "fence seat" && partIds[0] === id);
    const jointIds = own.map((joint) => joint.id);
    const lengthMm = own.reduce((sum, joint) => sum + joint.lengthMm, 0);
    const beside = fillets.filter(({ jointId }) => jointIds.includes(jointId));
    const cloth = panel.plies.at(-1)?.cloth;
    const legMm = overlapMm;
    const upMm = Math.min(legMm, Math.max(0, heightMm(loops) - filletMm));
    const tapeWidthMm = beside.length > 0 && cloth ? filletArcMm(Math.PI / 2, filletMm) + legMm + upMm : 0;
    const tapeMm2 = beside.reduce((sum, fillet) => sum + fillet.lengthMm * tapeWidthMm, 0);
    const ply = cloth && plyFigures(cloth.arealKgPerM2, mixOf({ fibreMassShare }));
    const resinKg = (lengthMm * thicknessMm * BOND_KG_PER_M2) / 1e6;
    const filletKg = beside.reduce((sum, { massKg }) => sum + massKg, 0);
    const inTapeKg = ((ply?.resinKgPerM2 ?? 0) * tapeMm2) / 1e6;
    const tapedM = tapeMm2 > 0 ? beside.reduce((sum, fillet) => sum + fillet.lengthMm / 1000, 0) : 0;
    return [
      {
        partId: id,
        jointIds,
        lengthMm,
        abradeMm: thicknessMm + 2 * (beside.length > 0 ? filletMm + legMm : 0) + 2 * ABRADE_MORE_MM,
        resinKg,
        filletKg,
        filletMm: beside.length > 0 ? filletMm : 0,
        tapeMm2,
        tapeWidthMm,
        tapeName: tapeMm2 > 0 ? (cloth?.name ?? "") : "",
        tapeKg: ((ply?.massKgPerM2 ?? 0) * tapeMm2) / 1e6,
        mixedKg: (resinKg + filletKg + inTapeKg) / (1 - wasteShare),
        workMinutes:
          (MINUTES.fence + (lengthMm / 1000) * MINUTES.perM + tapedM * MINUTES.tapePerM) / Math.max(1, hands),
      },
    ];
  });
}

/** How high a fence is, mm: its tape goes no higher. */
function heightMm(loops: Part["loops"]): number {
  const vs = loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ v }) => v)));
  return Math.max(...vs) - Math.min(...vs);
}

/** How the fences are bonded on, in order, each step with its reason. */
export function bondSteps(bonds: readonly PanelBond[], curedHours: number): readonly PanelStep[] {
  const [first] = bonds;
  if (first === undefined) return [];
  const names = bonds.map(({ partId }) => partId).join(", ");
  const taped = bonds.find(({ tapeMm2 }) => tapeMm2 > 0);
  return [
    {
      part: "bond",
      title: `Fit ${names} dry on the finished lower skin, under ${formatMm(1)} mm of gap all along; draw both sides of each on the skin`,
      why: "A gap is cheap to sand away now; thick resin in it is heavy, hot and weak.",
    },
    {
      part: "bond",
      title: `Strip the peel ply there, and abrade the skin with 80 grit until it is dull, in a strip ${formatMm(first.abradeMm)} mm wide along each line, and both sides of the fence as far up; wash off blush with water, dry, vacuum`,
      why: "Resin holds on to cured resin only where that is clean and rough.",
    },
    {
      part: "bond",
      title: `Thicken resin until it does not run, spread it on the upper edge, set the fence on its line, plumb by a square, and brace it with battens and tape every 300 mm`,
      why: "Under light pressure a bead shows all along. Pressed dry the joint is starved.",
    },
    ...(first.filletMm > 0
      ? [
          {
            part: "bond" as const,
            title: `Draw a fillet of ${formatNumber(first.filletMm, 0)} mm radius along both sides with the same mix${taped ? `; lay ${taped.tapeName} over it while it is wet, cut on the bias ${formatMm(taped.tapeWidthMm)} mm wide, and wet it out` : ""}`,
            why: taped
              ? "The tape carries what pulls on the fence into the skin. Glassed over while it is wet, a fillet is one with it."
              : "The fillet carries what pulls on the fence into the skin.",
          },
        ]
      : []),
    {
      part: "bond",
      title: `Leave it braced for ${formatNumber(curedHours, 0)} h`,
      why: "A fence that is moved while the resin sets stands on a broken joint.",
    },
  ];
}
