import {
  type Layout,
  type PackingProblem,
  packWithin,
  type RunLimit,
  verifyLayout,
} from "../../core/packing/index.ts";
import { readInstance } from "../sources/layout/read-instance.ts";
import { curvedStrips } from "./curved-strips.ts";

/**
 * Measures layouts and asserts nothing: `npm run bench:layout -- [seconds] [seed] [names]`, one worker, 10 s of
 * processor time for each set unless it is said: what else the machine does then counts little. Each layout is judged by the exact verifier before it is printed. Beside the density of each
 * open set stand the published means of ten or more runs: GCS of Elkeran 2013 (20 min) and those of Gardeyn, Vanden
 * Berghe & Wauters 2025 (20 min, three threads), both from tables 2 and 3 of the latter, arXiv:2509.13329.
 */
const SETS = [
  { name: "swim", aim10: 71.5, aim60: 73.5, mean2013: 74.49, mean2025: 78.26 },
  { name: "trousers", aim10: 89.0, aim60: 89.5, mean2013: 89.02, mean2025: 91.73 },
  { name: "shirts", aim10: 84.0, aim60: 86.0, mean2013: 87.59, mean2025: 89.66 },
  { name: "marques", aim10: 88.5, aim60: 89.3, mean2013: 89.4, mean2025: 90.93 },
  { name: "albano", aim10: 87.0, aim60: 87.8, mean2013: 87.47, mean2025: 89.47 },
] as const;

/** Rectangles with a known layout without waste (Hopper & Turton 2001). */
const RECTANGLES = ["c1p1", "c1p2", "c2p1", "c2p2"].map((name) => `hopper-turton-${name}`);

function main(): void {
  const [seconds = "10", seedText = "1", names = ""] = process.argv.slice(2);
  const seed = Number(seedText);
  const isAsked = (name: string): boolean => names === "" || names.split(",").includes(name);
  const limit: RunLimit = {
    kind: "time",
    milliseconds: Number(seconds) * 1000,
    nowMs: processorMs,
  };
  const line = (cells: readonly string[]): void => {
    const [first = "", ...rest] = cells;
    process.stdout.write(`${first.padEnd(22)}${rest.map((cell) => cell.padStart(13)).join("")}\n`);
  };
  line([
    `${seconds} s CPU, seed ${seed}`,
    "density %",
    "aim 10 s",
    "aim 60 s",
    "mean 2013",
    "mean 2025",
    "verdict",
    "CPU",
  ]);
  for (const { name, aim10, aim60, mean2013, mean2025 } of SETS) {
    if (!isAsked(name)) continue;
    const { problem, areaMm2 } = readInstance(name);
    const startMs = processorMs();
    const layout = packWithin(problem, seed, limit);
    const spentS = ((processorMs() - startMs) / 1000).toFixed(1);
    const figures = [aim10, aim60, mean2013, mean2025].map((figure) => figure.toFixed(2));
    line([name, density(layout, areaMm2), ...figures, verdict(problem, layout), `${spentS} s`]);
  }
  for (const name of RECTANGLES) {
    if (!isAsked(name)) continue;
    const { problem, areaMm2 } = readInstance(name);
    const layout = packWithin(problem, seed, { kind: "sweeps", sweeps: 200 });
    line([name, density(layout, areaMm2), "", "", "optimum 100", "", verdict(problem, layout)]);
  }
  if (isAsked("strips")) line(measureStrips(seed, limit));
}

/** Processor time that this process has taken, all of its threads, ms. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function density(layout: Layout | undefined, areaMm2: number): string {
  const sheet = layout?.sheets[0];
  return sheet === undefined ? "none" : ((100 * areaMm2) / (sheet.widthMm * sheet.usedMm)).toFixed(2);
}

function verdict(problem: PackingProblem, layout: Layout | undefined): string {
  if (layout === undefined) return "none";
  const faults = verifyLayout(problem, layout);
  return faults.length === 0 ? "sound" : `${faults.length} faults`;
}

/** Sixty long thin strips on sheets: how much of the sheets they use, up to where the last one's offcut begins. */
function measureStrips(seed: number, limit: RunLimit): readonly string[] {
  const sizes = [{ id: "sheet", lengthMm: 1250, widthMm: 600, quantity: undefined }];
  const pieces = curvedStrips(60, 1);
  const problem: PackingProblem = {
    pieces,
    stock: { kind: "sheets", sizes },
    clearanceMm: 2,
    marginMm: 0,
  };
  const layout = packWithin(problem, seed, limit);
  const areaMm2 = pieces.reduce((sum, { outline }) => sum + areaOf(outline), 0);
  const last = layout?.sheets.at(-1);
  const usedMm2 =
    last === undefined || layout === undefined ? 0 : 600 * (1250 * (layout.sheets.length - 1) + last.usedMm);
  const share = `${((100 * areaMm2) / usedMm2).toFixed(2)} % used`;
  const sheets = `${layout?.sheets.length ?? 0} of ${(areaMm2 / 750_000).toFixed(2)}`;
  return [
    `${pieces.length} curved strips`,
    share,
    "aim 80 %",
    "sheets",
    sheets,
    "",
    verdict(problem, layout),
  ];
}

const areaOf = (ring: readonly { readonly x: number; readonly y: number }[]): number =>
  Math.abs(
    ring.reduce((sum, a, index) => {
      const b = ring[(index + 1) % ring.length] ?? a;
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0),
  );

main();
