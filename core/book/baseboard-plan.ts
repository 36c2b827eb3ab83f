import { formatMm, type PlanPoint, stepClear } from "../foundation/index.ts";
import type { Baseboard, Rib, RibSet } from "../jig/index.ts";
import { type Block, tableBlocks } from "./blocks.ts";
import { type Box, boxOf, growBox, heightOf, widthOf } from "./boxes.ts";
import { dimensionMarks } from "./dimensions.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import { centreLineMarks, onView, planMarks, type View } from "./plan-picture.ts";
import { type SpaceShape, turnedOver } from "./plan-shapes.ts";
import { ribPlaceWords } from "./rib-piece.ts";
import { standardScale } from "./scales.ts";
import type { Mark, PaperPoint } from "./types.ts";

const MONO_END = { face: "mono", anchor: "end" } as const;

/** A baseboard from above with the tray over it and every rib's line, and its scale. */
export function baseboardPlan(
  parts: readonly SpaceShape[],
  { baseboard, ribs }: RibSet,
  lettering: Lettering,
): { readonly block: Block; readonly scale: number } {
  const isTurned = baseboard.attitude === "inverted";
  const seen = (p: { readonly x: number; readonly y: number }) => paper(p.x, isTurned ? -p.y : p.y);
  const box = boxOf(baseboard.corners.map(seen));
  const size = { widthMm: widthOf(box), heightMm: heightOf(box) };
  const scale = standardScale(size, { widthMm: CONTENT_WIDTH_MM - 34, heightMm: 95 });
  const [width, height] = [size.widthMm / scale, size.heightMm / scale];
  const shapes = isTurned ? parts.map(turnedOver) : parts;
  const lines = baseboard.lines.map((line) => ({ ...line, from: seen(line.from), to: seen(line.to) }));
  const boards = [
    ...ribs.map((rib) => ({ style: "thin" as const, corners: cornersOfBoard(rib) })),
    ...baseboard.slots.map(({ corners }) => ({ style: "cut" as const, corners })),
    ...baseboard.sheets.map(({ corners }) => ({ style: "hidden" as const, corners })),
  ].map(({ style, corners: [a, b] }) => ({ style, box: boxOf([seen(a), seen(b)]) }));
  const marks = baseboard.square.marks.map(seen);
  const viewAt = (corner: PaperPoint): View => ({ box, scale, corner });
  const codesAt = (view: View) => placeCodes(ribs, lines, view, lettering);
  const codes = boxOf(
    codesAt(viewAt(paper(0, 0))).flatMap((code) => [
      paper(code.box.left, code.box.bottom),
      paper(code.box.right, code.box.top),
    ]),
  );
  const [above, below] = [Math.max(0, codes.top - height), Math.max(0, -codes.bottom)];
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - width) / 2;
    const view = viewAt(paper(left, corner.y - 8 - above - height));
    const { x, y } = view.corner;
    const [upper, lower] = isTurned ? ["left hand", "right hand"] : ["right hand", "left hand"];
    return [
      boxMark(view.corner, width, height, "outline"),
      ...shapes.flatMap((shape) => planMarks(shape, view, "station")),
      ...(box.bottom < 0 && box.top > 0 ? centreLineMarks(view) : []),
      ...boards.map(({ style, box: { left: l, right: r, bottom: b, top: t } }) => {
        const [low, high] = [onView(view, paper(l, b)), onView(view, paper(r, t))];
        return boxMark(low, high.x - low.x, high.y - low.y, style);
      }),
      ...diagonals(marks.map((p) => onView(view, p))),
      ...codesAt(view).flatMap(ribMarks),
      ...dimensionMarks(view.corner, paper(x + width, y), -9 - below, size.widthMm),
      ...dimensionMarks(view.corner, paper(x, y + height), 8, size.heightMm),
      textMark(paper(x, y + height + above + 2.5), upper, { heightMm: 2.5, face: "bold" }),
      textMark(paper(x + 1.5, y - below - 4.5), lower, { heightMm: 2.5, face: "bold" }),
    ];
  };
  return { block: { heightMm: above + height + below + 22, draw }, scale };
}

/** The board of a rib in plan, from its station face to its other one. */
function cornersOfBoard(rib: Rib): readonly [PlanPoint, PlanPoint] {
  const us = rib.outlineMm.map(({ u }) => u);
  const [fromMm, toMm] = [Math.min(...us), Math.max(...us)];
  const goesUp = rib.stationFace === "front" || rib.stationFace === "left";
  const farMm = rib.atMm + (goesUp ? rib.thicknessMm : -rib.thicknessMm);
  return rib.runs === "across"
    ? [
        { x: rib.atMm, y: fromMm },
        { x: farMm, y: toMm },
      ]
    : [
        { x: fromMm, y: rib.atMm },
        { x: toMm, y: farMm },
      ];
}

/** A cross at each corner mark: what is measured across. */
const diagonals = (marks: readonly PaperPoint[]): readonly Mark[] =>
  marks.flatMap(({ x, y }) => [
    lineMark([paper(x - 1.5, y - 1.5), paper(x + 1.5, y + 1.5)], "thin"),
    lineMark([paper(x - 1.5, y + 1.5), paper(x + 1.5, y - 1.5)], "thin"),
  ]);

interface SeenLine {
  readonly ribId: string;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
}

interface Placed {
  readonly line: SeenLine;
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly box: Box;
}

/**
 * Rib lines with their codes beyond the baseboard: of ribs along at its rear end, of ribs across at the side on which
 * they stand, in as many rows as keep them apart.
 */
function placeCodes(
  ribs: readonly Rib[],
  lines: readonly SeenLine[],
  view: View,
  lettering: Lettering,
): readonly Placed[] {
  const standing: Box[] = [];
  return lines.flatMap((line) => {
    const rib = ribs.find((candidate) => candidate.id === line.ribId);
    if (rib === undefined) return [];
    const [from, to] = [onView(view, line.from), onView(view, line.to)];
    const width = lettering.widthMm(rib.id, "mono", CODE_MM);
    const { box, step } = firstPlace(rib, view, { from, to }, width);
    const placed = stepClear(box, step, standing);
    standing.push(growBox(placed, 0.6));
    return [{ line, from, to, box: placed }];
  });
}

const CODE_MM = 2.5;
const ROW_MM = 3.4;

/** Where a code stands first, and which way it steps outward. */
function firstPlace(
  rib: Rib,
  view: View,
  { from, to }: { readonly from: PaperPoint; readonly to: PaperPoint },
  width: number,
): { readonly box: Box; readonly step: PaperPoint } {
  const boxAt = (left: number, bottom: number): Box => ({
    left,
    right: left + width,
    bottom,
    top: bottom + 2.6,
  });
  if (rib.runs === "along") {
    const right = view.corner.x + widthOf(view.box) / view.scale;
    return { box: boxAt(right + 1.5, from.y - 0.9), step: paper(width + 1, 0) };
  }
  const [height, boardMm] = [heightOf(view.box) / view.scale, widthOf(view.box) / view.scale];
  // Clear of the lines that carry the dimension down from both ends.
  const [first, last] = [view.corner.x + 1, view.corner.x + boardMm - 1 - width];
  const left = Math.max(first, Math.min(last, from.x - width / 2));
  const isAbove = (from.y + to.y) / 2 > view.corner.y + 0.51 * height;
  return isAbove
    ? { box: boxAt(left, view.corner.y + height + 1), step: paper(0, ROW_MM) }
    : { box: boxAt(left, view.corner.y - 3.6), step: paper(0, -ROW_MM) };
}

const ribMarks = ({ line, from, to, box }: Placed): readonly Mark[] => [
  lineMark([from, to], "outline", "ribs"),
  textMark(paper(box.left, box.bottom), line.ribId, { heightMm: CODE_MM, face: "mono", layer: "ribs" }),
];

/** Where every rib stands, its ends, its station face and how its top is cut. */
export function positionTable({ ribs, baseboard }: RibSet, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Rib", widthMm: 15, face: "mono" as const },
    { title: "Stands at", widthMm: 22, ...MONO_END },
    { title: "Board's edge to station face", widthMm: 32, ...MONO_END },
    { title: "From", widthMm: 18, ...MONO_END },
    { title: "To", widthMm: 18, ...MONO_END },
    { title: "Station face", widthMm: 19 },
    { title: "Body toward", widthMm: 19 },
    { title: "Top", widthMm: 26 },
  ];
  const rows = ribs.map((rib) => {
    const us = rib.outlineMm.map((p) => p.u);
    const proud = rib.mostProudMm > 0.05 ? `, proud ${formatMm(rib.mostProudMm)}` : "";
    return [
      rib.id,
      ribPlaceWords(rib),
      boardWords(baseboard, rib),
      formatMm(Math.min(...us)),
      formatMm(Math.max(...us)),
      rib.stationFace,
      baseboard.lines.find(({ ribId }) => ribId === rib.id)?.toward ?? "",
      `${rib.cut}${proud}`,
    ];
  });
  return tableBlocks(columns, rows, lettering);
}

/** Distance of a rib's station face from the baseboard's front edge (across) or left edge (along). */
function boardWords({ corners }: Baseboard, rib: Rib): string {
  return rib.runs === "across"
    ? `front ${formatMm(rib.atMm - Math.min(...corners.map((p) => p.x)))}`
    : `left ${formatMm(rib.atMm - Math.min(...corners.map((p) => p.y)))}`;
}
