import { performance } from "node:perf_hooks";
import { drawBook, drawTemplates, type Fonts } from "../../core/book/index.ts";
import { type Design, designTray } from "../../core/design.ts";
import type { PlanNode, Project } from "../../core/project/index.ts";
import { writePdf } from "../../core/writers/index.ts";
import { readExample } from "../read-example.ts";
import { readFonts } from "../read-fonts.ts";

/**
 * Measures, and asserts nothing: the whole core design of the demo tray, the full print (build book and A4
 * templates), and how the design grows with the nodes of one outline. The aims are 15 ms and 2 s on two cores.
 */

interface Row {
  readonly what: string;
  readonly runs: number;
  readonly medianMs: number;
  readonly note: string;
}

const WARM_UP_RUNS = 15;

function main(): void {
  const demo = readExample("hill-climb-floor");
  const fonts = readFonts();
  const design = designTray(demo);
  const rows = [
    measure("design of the demo tray", 41, () => designTray(demo), countOf(design)),
    measure("book and A4 templates as PDF", 5, () => print(design, fonts), pagesOf(design, fonts)),
    ...[4, 20, 100, 500].map((count) => growth(demo, count)),
  ];
  const line = (cells: readonly string[]) => {
    const [what = "", runs = "", median = "", note = ""] = cells;
    process.stdout.write(`${what.padEnd(36)} ${runs.padStart(5)} ${median.padStart(12)}  ${note}\n`);
  };
  line(["what", "runs", "median ms", ""]);
  for (const { what, runs, medianMs, note } of rows) line([what, `${runs}`, medianMs.toFixed(1), note]);
}

function measure(what: string, runs: number, work: () => unknown, note: string): Row {
  // The first runs are slower, until the machine has seen the code.
  for (let i = 0; i < Math.min(WARM_UP_RUNS, runs); i++) work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  const medianMs = [...times].sort((a, b) => a - b)[Math.floor(runs / 2)] ?? 0;
  return { what, runs, medianMs, note };
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

function print(design: Design, fonts: Fonts): readonly Uint8Array[] {
  return [drawBook(design, fonts), drawTemplates(design, fonts).set].map((set) => writePdf(set, fonts));
}

const countOf = ({ parts, strips, jig, problems }: Design): string =>
  `${parts.length} parts, ${strips.length} strips, ${jig.ribs.length} ribs, ${problems.length} problems`;

function pagesOf(design: Design, fonts: Fonts): string {
  const [book, templates] = [drawBook(design, fonts), drawTemplates(design, fonts).set];
  const bytes = print(design, fonts).reduce((sum, file) => sum + file.length, 0);
  return `${book.pages.length} + ${templates.pages.length} pages, ${(bytes / 1e6).toFixed(2)} MB`;
}

main();
