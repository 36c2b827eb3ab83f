import { foamMmOf, signedAreaMm2 } from "../cutting/index.ts";
import { formatNumber } from "../foundation/index.ts";
import { glueMassKg, slotFillingKg } from "../glue-up/index.ts";
import { boardPieces, type Jig } from "../jig/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, type Project, ribBoardOf, type Stock } from "../project/index.ts";
import { workMinutes } from "../schedule/index.ts";
import type { Totals, Tray } from "./types.ts";

/**
 * The sums over a tray: bare foam, metal plates, glue that stays in the joints, stock and board by area (the least that can
 * be enough, before anything is laid out), and hands-on hours. Masses in kg, areas in mm², lengths in mm.
 */
export function totalTray(tray: Tray, project: Project): Totals {
  const { parts, strips, seams, joints } = tray;
  const foamMasses = parts.map((part) => foamMassKg(part, project));
  return {
    partCount: parts.length,
    stripCount: strips.length,
    foamAreaMm2: sum(parts.map(({ flatAreaMm2 }) => flatAreaMm2)),
    foamMassKg: sum(foamMasses),
    metalMassKg: sum(tray.plates.map(({ massKg, parts: hands }) => massKg * hands.length)),
    glueMassKg:
      sum(
        glueLines(bareOf(tray)).map(({ lengthMm, meeting, scarfMm }) =>
          glueMassKg(lengthMm, meeting, project, scarfMm),
        ),
      ) + slotFillingKg(strips, project),
    jointLengthMm: sum([...joints, ...seams].map(({ lengthMm }) => lengthMm)),
    stock: project.stock.flatMap((stock) => stockTotal(stock, tray, project)),
    ...boardTotals(tray.jig, project),
    handsOnHours: sum(Object.values(workMinutes(bareOf(tray), project))) / 60,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The bare foam of one part, kg; 0 where its foam is unknown. */
export function foamMassKg(part: Part, project: Project): number {
  const density = foamOf(project, part.foamId)?.densityKgPerM3 ?? 0;
  return part.flatAreaMm2 * foamMmOf(part) * 1e-9 * density;
}

interface GlueLine {
  readonly lengthMm: number;
  readonly meeting: readonly Part[];
  readonly scarfMm?: number | undefined;
}

/** The tray without what is cut from panels: that is sawn and bonded, not cut and glued as foam. */
export function bareOf<Pieces extends Pick<Tray, "parts" | "strips" | "seams" | "joints">>(
  tray: Pieces,
): Pieces {
  const isPanel = new Set(tray.parts.filter(({ panel }) => panel).map(({ id }) => id));
  return {
    ...tray,
    strips: tray.strips.filter(({ partId }) => !isPanel.has(partId)),
    seams: tray.seams.filter(({ partId }) => !isPanel.has(partId)),
    joints: tray.joints.filter(({ partIds }) => !partIds.some((id) => isPanel.has(id))),
  };
}

function glueLines({ parts, seams, joints }: Tray): GlueLine[] {
  const partsOf = (ids: readonly string[]) => parts.filter(({ id }) => ids.includes(id));
  return [
    ...joints.map(({ lengthMm, partIds }) => ({ lengthMm, meeting: partsOf(partIds) })),
    ...seams.map(({ lengthMm, partId, scarfMm }) => ({ lengthMm, meeting: partsOf([partId]), scarfMm })),
    ...parts.flatMap(insertLines),
  ].filter(({ meeting }) => meeting.length > 0);
}

/** The glue along the strips that are let in at a part's edges. */
export const insertLines = (part: Part): readonly GlueLine[] =>
  part.edges.flatMap(({ letIn, flatLengthMm }) =>
    letIn?.of === "insert" ? [{ lengthMm: flatLengthMm, meeting: [part] }] : [],
  );

function stockTotal(stock: Stock, tray: Tray, project: Project): Totals["stock"] {
  const own = bareOf(tray).strips.filter(({ stockId }) => stockId === stock.id);
  const panels = tray.panels.panels.filter(({ stockId }) => stockId === stock.id);
  if (own.length + panels.length === 0) return [];
  const areaMm2 =
    sum(own.flatMap(({ cutLinesMm }) => cutLinesMm.map(signedAreaMm2))) +
    sum(panels.map(({ lengthMm, widthMm }) => lengthMm * widthMm));
  const lostMm = 2 * Math.max(0, project.cutting.stockEdgeMm);
  const sheetMm2 = (stock.lengthMm - lostMm) * (stock.widthMm - lostMm);
  const foamName = foamOf(project, stock.foamId)?.name ?? stock.foamId;
  const size = `${formatNumber(stock.lengthMm, 0)} × ${formatNumber(stock.widthMm, 0)}`;
  const name = `${foamName}, ${formatNumber(stock.thicknessMm, 0)} mm, ${size}`;
  return [{ stockId: stock.id, name, areaMm2, sheetsAtLeast: sheetsAtLeast(areaMm2, sheetMm2) }];
}

/** How many sheets an area needs when nothing is wasted; a hair over a whole number is rounding. */
const sheetsAtLeast = (areaMm2: number, sheetMm2: number): number =>
  sheetMm2 > 0 ? Math.max(0, Math.ceil(areaMm2 / sheetMm2 - 1e-9)) : 0;

function boardTotals(
  jig: Jig,
  project: Project,
): Pick<Totals, "ribBoardAreaMm2" | "ribBoardsAtLeast" | "ribBoardMassKg"> {
  const board = ribBoardOf(project);
  const ribBoardAreaMm2 = sum(
    boardPieces(jig).flatMap(({ outlineMm, holesMm }) => [
      Math.abs(signedAreaMm2(outlineMm)),
      ...holesMm.map((hole) => -Math.abs(signedAreaMm2(hole))),
    ]),
  );
  return {
    ribBoardAreaMm2,
    ribBoardsAtLeast:
      board === undefined ? 0 : sheetsAtLeast(ribBoardAreaMm2, board.lengthMm * board.widthMm),
    ribBoardMassKg: ribBoardAreaMm2 * (board?.thicknessMm ?? 0) * 1e-9 * (board?.densityKgPerM3 ?? 0),
  };
}
