import { formatMm, formatNumber } from "../foundation/index.ts";
import type { Solid } from "../solids/index.ts";
import { paragraphBlock } from "./blocks.ts";
import { boxOf, heightOf, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { dimensionMarks } from "./dimensions.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, lineMark, loopMark, paper, textMark } from "./marks.ts";
import { noteMarks } from "./notes-on-paper.ts";
import { contentOf, type PaperFormat, type SheetBody } from "./page-frame.ts";
import {
  centreLineMarks,
  codeMarks,
  linesOfPlan,
  onView,
  planBox,
  planMarks,
  sideLoops,
  type View,
} from "./plan-picture.ts";
import { plateShapes, type SpaceShape } from "./plan-shapes.ts";
import { standardScale } from "./scales.ts";
import { type SectionStation, sectionStations } from "./section-stations.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Room for dimensions and station numbers around the views, mm. */
const BESIDE_MM = 22;
const BETWEEN_MM = 42;
const HEADING_MM = 22;
const BELOW_MM = 16;

/** The general arrangement: plan from above with both halves, side view below on the same stations. */
export function arrangementSheet(
  design: Design,
  { solids, parts }: { readonly solids: readonly Solid[]; readonly parts: readonly SpaceShape[] },
  lettering: Lettering,
): readonly SheetBody[] {
  const shapes = [...parts, ...plateShapes(design)];
  if (shapes.length === 0) return [];
  const plan = planBox(shapes);
  const inSide = shapes.filter((shape) => shape.hand !== "left");
  const sidePoints = inSide.flatMap((shape) => sideLoops(shape).flat());
  const side = boxOf([...sidePoints, paper(plan.left, 0), paper(plan.right, 0)]);
  const size = { widthMm: widthOf(plan), heightMm: heightOf(plan) + heightOf(side) };
  const roomOn = (format: PaperFormat) => {
    const area = contentOf(format);
    return {
      widthMm: widthOf(area) - 2 * BESIDE_MM,
      heightMm: heightOf(area) - BETWEEN_MM - HEADING_MM - BELOW_MM,
    };
  };
  const stations = sectionStations(solids);
  const small = standardScale(size, roomOn("A4"));
  const format = small > 5 ? "A3" : "A4";
  const scale = standardScale(size, roomOn(format));
  const area = contentOf(format);
  const left = (area.left + area.right - size.widthMm / scale) / 2;
  const planBottom = area.top - HEADING_MM - heightOf(plan) / scale;
  const planView: View = { box: plan, scale, corner: paper(left, planBottom) };
  const sideView: View = {
    box: { ...side, left: plan.left, right: plan.right },
    scale,
    corner: paper(left, planBottom - BETWEEN_MM - heightOf(side) / scale),
  };
  return [
    {
      title: "General arrangement",
      documentType: "arrangement",
      scale: `1:${scale}`,
      format,
      marks: [
        textMark(paper(area.left, area.top - 5), "Plan from above, and side from the left", {
          heightMm: 3.5,
          face: "bold",
        }),
        ...forward(paper(area.right - 34, area.top - 4)),
        ...shapes.flatMap((shape) => planMarks(shape, planView, isUnderFoam(shape) ? "hidden" : "outline")),
        ...codeMarks(shapes, planView, lettering, [
          ...linesOfPlan(shapes, planView),
          ...centreLineMarks(planView),
        ]),
        ...stations.flatMap((station) => planeMarks(station, planView)),
        ...(plan.bottom < 0 && plan.top > 0 ? centreLineMarks(planView) : []),
        ...stationRuler(planView, sideView),
        ...inSide.flatMap((shape) => sideMarks(shape, sideView)),
        ...ground(sideView),
        ...mainDimensions(planView, sideView, inSide),
        ...paragraphBlock(CAPTION, widthOf(area), lettering).draw(paper(area.left, sideView.corner.y - 8)),
        ...noteMarks(design.project, "plan", planView),
        ...noteMarks(design.project, "side", sideView),
      ],
    },
  ];
}

/**
 * Where a section is taken: the thick ends of its plane over and under the plan, arrows toward what is seen (forward), and
 * its letter at each (ISO 128-3).
 */
function planeMarks({ letter, xMm }: SectionStation, view: View): readonly Mark[] {
  const [low, high] = [onView(view, paper(xMm, view.box.bottom)), onView(view, paper(xMm, view.box.top))];
  const end = (from: number, to: number): readonly Mark[] => [
    lineMark([paper(low.x, from), paper(low.x, to)], "outline", "sections"),
    ...arrowMarks(paper(low.x, to), paper(low.x - 5, to), 2.5, "thin"),
    textMark(paper(low.x + 1.5, Math.min(from, to) + 0.6), letter, {
      heightMm: 3.5,
      face: "bold",
      layer: "sections",
    }),
  ];
  return [...end(high.y + 2, high.y + 7), ...end(low.y - 2, low.y - 7)];
}

/** Fences and plates lie under the sheets. */
const isUnderFoam = ({ kind }: SpaceShape): boolean => kind === "fence" || kind === "plate";

const forward = (from: PaperPoint): readonly Mark[] => [
  ...arrowMarks(paper(from.x + 14, from.y), from, 3, "thin"),
  textMark(paper(from.x + 16, from.y - 1.2), "forward", { face: "bold" }),
];

const sideMarks = (shape: SpaceShape, view: View): readonly Mark[] =>
  sideLoops(shape).map((loop) =>
    loopMark(
      loop.map((p) => onView(view, p)),
      shape.kind === "fence" ? "outline" : "thin",
      "side",
    ),
  );

/** The ground plane, drawn a little beyond the view. */
function ground(view: View): readonly Mark[] {
  const [from, to] = [onView(view, paper(view.box.left, 0)), onView(view, paper(view.box.right, 0))];
  return [
    lineMark([paper(from.x - 6, from.y), paper(to.x + 6, to.y)], "thin", "side"),
    textMark(paper(to.x + 7, to.y - 0.9), "ground"),
  ];
}

const CAPTION =
  "z: height of the drawn face above ground at the front, at the rear and where it is lowest. A–A and on: cross-sections, on the next sheet.";

/** Steps of the stations, mm. */
const STEPS_MM = [50, 100, 200, 250, 500, 1000];

/** Stations between plan and side view, as far apart as their numbers need. */
function stationRuler(plan: View, side: View): readonly Mark[] {
  const { box, scale } = plan;
  const step = STEPS_MM.find((one) => one / scale >= 9) ?? 1000;
  const [top, bottom] = [plan.corner.y - 11, side.corner.y + heightOf(side.box) / scale + 3];
  const middle = bottom + 3;
  const marks: Mark[] = [];
  for (let x = Math.ceil(box.left / step) * step; x <= box.right + 1e-6; x += step) {
    const at = onView(plan, paper(x, box.bottom)).x;
    marks.push(
      lineMark([paper(at, top), paper(at, top - 3)], "station", "stations"),
      lineMark([paper(at, bottom), paper(at, bottom + 2)], "station", "stations"),
      textMark(paper(at, middle), formatNumber(x, 0), { heightMm: 2.5, face: "mono", anchor: "middle" }),
    );
  }
  return marks;
}

function mainDimensions(plan: View, side: View, shapes: readonly SpaceShape[]): readonly Mark[] {
  const { box } = plan;
  const corner = (x: number, y: number) => onView(plan, paper(x, y));
  const points = shapes.filter((shape) => shape.kind === "section").flatMap((shape) => shape.loops.flat());
  const lowest = points.reduce((low, p) => (p.z < low.z ? p : low), points[0] ?? { x: 0, y: 0, z: 0 });
  const ends = [
    points.reduce((one, p) => (p.x < one.x ? p : one), points[0] ?? lowest),
    points.reduce((one, p) => (p.x > one.x ? p : one), points[0] ?? lowest),
  ];
  const hasThroat = ends.every((p) => p.z > lowest.z + 0.05);
  const heights = [...ends, ...(hasThroat ? [lowest] : [])].filter(
    (p, i, all) => all.findIndex((other) => Math.abs(other.x - p.x) * 6 < 10 * plan.scale) === i,
  );
  return [
    ...dimensionMarks(corner(box.left, box.bottom), corner(box.right, box.bottom), -20, widthOf(box)),
    ...dimensionMarks(corner(box.left, box.bottom), corner(box.left, box.top), 10, heightOf(box)),
    ...heights.map((p) => {
      const foot = onView(side, paper(p.x, 0));
      return textMark(paper(foot.x, foot.y - 5), `z ${formatMm(p.z)}`, {
        face: "mono",
        anchor: "middle",
        heightMm: 2.5,
      });
    }),
  ];
}
