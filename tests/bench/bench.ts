import { performance } from "node:perf_hooks";
import { drawBook, drawTemplates, type Fonts, paperWork } from "../../core/book/index.ts";
import { cubicSpline, type SplineInterval } from "../../core/curves/index.ts";
import { type Design, designTray } from "../../core/design.ts";
import { newMemory } from "../../core/foundation/index.ts";
import { orderSheets } from "../../core/glue-up/order-sheets.ts";
import { AS_DRAWN, lyingFoam, placeRibs } from "../../core/jig/index.ts";
import { newOpening, type PlanNode, type Project, resolveLines } from "../../core/project/index.ts";
import {
  compileEdge,
  developRuled,
  judgeTwist,
  pairEdges,
  type SpacePiece,
} from "../../core/rulings/index.ts";
import { writePdf } from "../../core/writers/index.ts";
import { lengthsIn } from "../../web/lengths/index.ts";
import { ALL_SNAPS, sceneOf, snapPlace, type ToolContext } from "../../web/tools/index.ts";
import { groundOfGrid } from "../core/glue-up/grids.ts";
import { readExample } from "../read-example.ts";
import { readFonts } from "../read-fonts.ts";
import { manyTiles } from "./many-tiles.ts";
import { isAlone, peakOfManyTilesMb } from "./peak-memory.ts";

/**
 * Measures, and asserts nothing: the whole core design of the demo tray, the full print (build book and A4
 * templates), how the design grows with the nodes of one outline, and a transition by itself. The aims are 15 ms, 2 s
 * and 8 ms on two cores.
 */

interface Row {
  readonly what: string;
  readonly runs: number;
  readonly medianMs: number;
  /** On all cores; of use where the machine does other things too. */
  readonly processorMs: number;
  readonly note: string;
}

const WARM_UP_RUNS = 15;

function main(): void {
  if (isAlone(() => designTray(readExample("hill-climb-floor")), readFonts)) return;
  const demo = readExample("hill-climb-floor");
  const fonts = readFonts();
  const design = designTray(demo);
  const rows = [
    measure("design of the demo tray", 41, () => designTray(demo), countOf(design)),
    measure("book and A4 templates as PDF", 5, () => print(design, fonts), pagesOf(design, fonts)),
    ...[100, 300, 1000].map((count) => tiles(design, fonts, count)),
    ...[4, 20, 100, 500, 2000].map((count) => growth(demo, count)),
    snapping(demo),
    placing(design),
    replanning(design),
    ordering(),
    measure(
      "ruled sheet, edges of 60 nodes",
      41,
      ruledSheet,
      "rulings, twist, pattern of 800 points; aim 8 ms",
    ),
  ];
  const line = (cells: readonly string[]) => {
    const [what = "", runs = "", median = "", processor = "", note = ""] = cells;
    process.stdout.write(
      `${what.padEnd(36)} ${runs.padStart(5)} ${median.padStart(12)} ${processor.padStart(14)}  ${note}\n`,
    );
  };
  line(["what", "runs", "median ms", "processor ms", ""]);
  for (const { what, runs, medianMs, processorMs, note } of rows)
    line([what, `${runs}`, medianMs.toFixed(1), processorMs.toFixed(1), note]);
  process.stdout.write(
    `Memory at most, 300 tiles, whole process: ${peakOfManyTilesMb().toFixed(0)} MB; aim 500 MB\n`,
  );
}

function measure(what: string, runs: number, work: () => unknown, note: string): Row {
  // The first runs are slower, until the machine has seen the code.
  for (let i = 0; i < Math.min(WARM_UP_RUNS, runs); i++) work();
  const times = Array.from({ length: runs }, () => {
    const [start, used] = [performance.now(), process.cpuUsage()];
    work();
    const { user, system } = process.cpuUsage(used);
    return { ms: performance.now() - start, processorMs: (user + system) / 1000 };
  });
  const median = (each: (time: (typeof times)[number]) => number) =>
    times.map(each).sort((a, b) => a - b)[Math.floor(runs / 2)] ?? 0;
  return {
    what,
    runs,
    medianMs: median(({ ms }) => ms),
    processorMs: median(({ processorMs }) => processorMs),
    note,
  };
}

/** Ribs of the demo placed automatically. */
function placing(design: Design): Row {
  const foam = lyingFoam({ ...design, laid: AS_DRAWN });
  const places = new Set(design.jig.ribs.map(({ atMm }) => atMm));
  return measure(
    "automatic placement of ribs",
    21,
    () => placeRibs(foam, design.project),
    `${places.size} places; aim 50 ms`,
  );
}

/** The order in which sixty sheets come to the jig, in ten columns and six rows. */
function ordering(): Row {
  const ground = groundOfGrid(10, 60).ground;
  return measure(
    "order of 60 sheets",
    5,
    () => orderSheets(ground),
    `${ground.bonds.length} joints; aim 1 s`,
  );
}

/** The demo's work on the calendar again, as the screen asks for it: with a day lost, then in a colder shop as well. */
function replanning({ project, schedule }: Design): Row {
  const [day = ""] = schedule.days.filter(({ workMinutes }) => workMinutes > 0).map(({ date }) => date);
  const lost = { ...project, schedule: { ...project.schedule, lostDays: [day] } };
  const cold = { ...lost, laminate: { ...project.laminate, shopCelsius: 16 } };
  const memory = newMemory();
  designTray(project, memory);
  return measure(
    "a lost day, then a cold shop replanned",
    11,
    () => [designTray(lost, memory), designTray(cold, memory)],
    `${schedule.tasks.length} tasks; aim 1 s each`,
  );
}

/** A hundred moves of the hand along a line being drawn, over the demo with a thousand nodes more. */
function snapping(demo: Project): Row {
  const nodes = Array.from({ length: 1000 }, (_, index): PlanNode => {
    const angle = (2 * Math.PI * index) / 1000;
    const [x, y] = [900 + 800 * Math.cos(angle), 450 + 400 * Math.sin(angle)];
    return { kind: "node", id: `b${index}`, x, y, next: index % 2 === 0 ? "line" : "curve" };
  });
  const opening = newOpening({ id: "many", number: 99, name: "Many nodes", elements: nodes, closed: true });
  const project = { ...demo, openings: [...demo.openings, opening] };
  const context: ToolContext = {
    project,
    scene: sceneOf(project, resolveLines(project)),
    selection: undefined,
    hairlineXMm: 1000,
    snaps: ALL_SNAPS,
    lengths: lengthsIn("mm"),
    heightOver: () => undefined,
    wingEdges: [],
  };
  const step = 100;
  const move = (index: number) =>
    snapPlace({
      place: {
        view: "plan",
        at: [900 + 802 * Math.cos(index / 16), 450 + 402 * Math.sin(index / 16)],
        mmPerPx: [2, 2],
        reachPx: 12,
        snaps: true,
      },
      context,
      draft: [
        { at: [-300, 200], next: "line" },
        { at: [-200, 300], next: "line" },
      ],
    });
  return measure(
    "100 moves snapped, 1,000 nodes",
    21,
    () => Array.from({ length: step }, (_, index) => move(index)),
    "aim 200 ms: 2 ms a move",
  );
}

/** The same tray with a rounded outline of many nodes in place of its sections. */
function growth(demo: Project, count: number): Row {
  const first = demo.items.find((item) => item.kind === "section");
  if (first?.kind !== "section") throw new Error("The demo has a section.");
  const nodes = Array.from({ length: count }, (_, index): PlanNode => {
    const angle = (2 * Math.PI * index) / count;
    const x = 700 + 500 * Math.cos(angle);
    return { kind: "node", id: `g${index}`, x, y: 450 + 250 * Math.sin(angle), next: "line" };
  });
  const project: Project = { ...demo, items: [{ ...first, outline: { closed: true, elements: nodes } }] };
  const design = designTray(project);
  return measure(
    `one section of ${count} nodes`,
    count > 400 ? 5 : 21,
    () => designTray(project),
    countOf(design),
  );
}

/** Two splines of 60 nodes each, a floor's ramps 250 mm apart: paired, judged and laid flat. */
function ruledSheet(): number {
  const first = compileEdge(splineEdge((x) => [x, 20 * Math.sin(x / 600), 60 * risen((x - 900) / 900)]));
  const second = compileEdge(
    splineEdge((x) => [x, 250 + 30 * Math.cos(x / 500), 40 + 160 * risen((x - 700) / 1100)]),
  );
  const foam = { thicknessMm: 10, leastRadiusMm: 600 };
  const sheet = pairEdges(first, second, foam);
  const { maxTwistRad } = judgeTwist(sheet, { ...foam, strainLimit: 0.008 });
  const { flatAt } = developRuled(sheet, 5);
  let sum = maxTwistRad;
  for (let k = 0; k < 400; k++)
    for (const t of [0, 1]) sum += flatAt({ sMm: (sheet.lengthSMm * k) / 399, t }).u;
  return sum;
}

const risen = (u: number): number => (u <= 0 ? 0 : u * u * (3 - 2 * u));

/** The cubic spline through 60 points of a curve, as pieces in space. */
function splineEdge(f: (x: number) => readonly [number, number, number]): readonly SpacePiece[] {
  const knots = Array.from({ length: 60 }, (_, k) => (1800 * k) / 59);
  const free = { kind: "natural" } as const;
  const axis = (index: 0 | 1 | 2) =>
    cubicSpline(
      knots,
      knots.map((x) => f(x)[index]),
      { kind: "open", start: free, end: free },
    );
  const [xs, ys, zs] = [axis(0), axis(1), axis(2)];
  const value = ([a, b, c, d]: SplineInterval, u: number) => a + u * (b + u * (c + u * d));
  const slope = ([, b, c, d]: SplineInterval, u: number, span: number) =>
    span * (b + u * (2 * c + 3 * u * d));
  return xs.flatMap((x, k): SpacePiece[] => {
    const [y, z, span] = [ys[k], zs[k], 1800 / 59];
    if (!y || !z) return [];
    return [
      {
        pointAt: (t) => ({ x: value(x, t * span), y: value(y, t * span), z: value(z, t * span) }),
        velocityAt: (t) => ({
          x: slope(x, t * span, span),
          y: slope(y, t * span, span),
          z: slope(z, t * span, span),
        }),
      },
    ];
  });
}

function print(design: Design, fonts: Fonts): readonly Uint8Array[] {
  const work = paperWork(design);
  return [drawBook(design, fonts, work), drawTemplates(design, fonts, work).set].map((set) =>
    writePdf(set, fonts),
  );
}

/** The templates of so many tiles: laid out, drawn, written. */
function tiles(demo: Design, fonts: Fonts, count: number): Row {
  const { tray, tileCount } = manyTiles(demo, count);
  const work = () => writePdf(drawTemplates(tray, fonts, paperWork(tray)).set, fonts);
  const row = measure(`templates of about ${count} tiles`, 3, work, "");
  return {
    ...row,
    note: `${tileCount} tiles, ${(row.processorMs / tileCount).toFixed(2)} ms of processor each`,
  };
}

const countOf = ({ parts, strips, jig, problems }: Design): string =>
  `${parts.length} parts, ${strips.length} strips, ${jig.ribs.length} ribs, ${problems.length} problems`;

function pagesOf(design: Design, fonts: Fonts): string {
  const [book, templates] = [drawBook(design, fonts), drawTemplates(design, fonts).set];
  const bytes = print(design, fonts).reduce((sum, file) => sum + file.length, 0);
  return `${book.pages.length} + ${templates.pages.length} pages, ${(bytes / 1e6).toFixed(2)} MB`;
}

main();
