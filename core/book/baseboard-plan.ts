import { formatMm, type PlanPoint } from "../foundation/index.ts";
import type { Baseboard, Rib, RibSet } from "../jig/index.ts";
import { type Block, tableBlocks } from "./blocks.ts";
import { type Box, boxesOverlap, boxOf, growBox, heightOf, widthOf } from "./boxes.ts";
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
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - width) / 2;
    const view: View = { box, scale, corner: paper(left, corner.y - 8 - height) };
    const { x, y } = view.corner;
    const [above, below] = isTurned ? ["left hand", "right hand"] : ["right hand", "left hand"];
    return [
      boxMark(view.corner, width, height, "outline"),
      ...shapes.flatMap((shape) => planMarks(shape, view, "station")),
      ...(box.bottom < 0 && box.top > 0 ? centreLineMarks(view) : []),
      ...boards.map(({ style, box: { left: l, right: r, bottom: b, top: t } }) => {
        const [low, high] = [onView(view, paper(l, b)), onView(view, paper(r, t))];
        return boxMark(low, high.x - low.x, high.y - low.y, style);
      }),
      ...diagonals(marks.map((p) => onView(view, p))),
      ...ribLines(ribs, lines, view, lettering),
      ...dimensionMarks(
        view.corner,
        paper(x + width, y),
        ribs.some((rib) => rib.runs === "across") ? -14 : -9,
        size.widthMm,
      ),
      ...dimensionMarks(view.corner, paper(x, y + height), 8, size.heightMm),
      textMark(paper(x, y + height + 1.5), above, { heightMm: 2.5, face: "bold" }),
      textMark(paper(x + width + 1.5, y + 0.5), below, { heightMm: 2.5, face: "bold" }),
    ];
  };
  return { block: { heightMm: height + 30, draw }, scale };
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

/** Rib lines thick, the code at the end beyond the baseboard, codes that would collide stepped outward. */
function ribLines(
  ribs: readonly Rib[],
  lines: readonly SeenLine[],
  view: View,
  lettering: Lettering,
): readonly Mark[] {
  const ends: Box[] = [];
  return lines.flatMap((line) => {
    const rib = ribs.find((candidate) => candidate.id === line.ribId);
    const [from, to] = [onView(view, line.from), onView(view, line.to)];
    if (rib === undefined) return [];
    const width = lettering.widthMm(rib.id, "mono", 2.5);
    const spot = labelSpot(rib, view, { from, to });
    let box = { left: spot.x, right: spot.x + width, bottom: spot.y, top: spot.y + 2.6 };
    while (ends.some((one) => boxesOverlap(growBox(one, 0.3), box))) {
      box =
        rib.runs === "across"
          ? { ...box, bottom: box.bottom - 3.4, top: box.top - 3.4 }
          : { ...box, left: box.left + width + 1, right: box.right + width + 1 };
    }
    ends.push(box);
    return [
      lineMark([from, to], "outline", "ribs"),
      textMark(paper(box.left, box.bottom), rib.id, { heightMm: 2.5, face: "mono", layer: "ribs" }),
    ];
  });
}

function labelSpot(
  rib: Rib,
  view: View,
  line: { readonly from: PaperPoint; readonly to: PaperPoint },
): PaperPoint {
  if (rib.runs === "across") return paper(line.from.x - 2, view.corner.y - 3.2);
  return paper(view.corner.x + widthOf(view.box) / view.scale + 1.5, line.from.y - 0.9);
}

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
