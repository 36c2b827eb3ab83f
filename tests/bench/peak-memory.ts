import { spawnSync } from "node:child_process";
import { type Design, drawTemplates, type Fonts, paperWork } from "../../core/book/index.ts";
import { writePdf } from "../../core/writers/index.ts";
import { manyTiles } from "./many-tiles.ts";

/** The argument with which a bench measures one job alone, in a process of its own. */
const ALONE = "one job of 300 tiles";

/** Whether this process was begun to measure the one job; then it has been done, and its peak printed. */
export function isAlone(demo: () => Design, fonts: () => Fonts): boolean {
  if (!process.argv.includes(ALONE)) return false;
  const { tray } = manyTiles(demo(), 300);
  writePdf(drawTemplates(tray, fonts(), paperWork(tray)).set, fonts());
  process.stdout.write(`${process.resourceUsage().maxRSS / 1024}`);
  return true;
}

/** The most memory that a process ever held which designs the demo tray and writes 300 tiles, MB. */
export function peakOfManyTilesMb(): number {
  const { stdout } = spawnSync(process.execPath, [process.argv[1] ?? "", ALONE], { encoding: "utf8" });
  return Number(stdout);
}
