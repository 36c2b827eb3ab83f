import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { PackingPiece, PackingProblem } from "../../../core/packing/index.ts";

interface Instance {
  readonly name: string;
  readonly source: string;
  readonly licence: string;
  readonly reference: string;
  readonly container: { readonly width: number };
  readonly totalArea: number;
  readonly items: readonly {
    readonly id: number;
    readonly demand: number;
    readonly allowedRotations: readonly number[];
    readonly polygon: readonly (readonly [number, number])[];
  }[];
}

/**
 * A published instance of the strip problem from the ESICUP working group's collection (github.com/ESICUP/datasets,
 * CC0 1.0), each unit of the data taken as a millimetre. Every file names its source, licence and reference.
 */
export function readInstance(name: string): { readonly problem: PackingProblem; readonly areaMm2: number } {
  const path = join(process.cwd(), "tests/sources/layout", `${name}.json`);
  const { container, items, totalArea } = JSON.parse(readFileSync(path, "utf8")) as Instance;
  const pieces = items.flatMap((item): readonly PackingPiece[] => {
    const outline = item.polygon.map(([x, y]) => ({ x, y }));
    const anglesRad = item.allowedRotations.map((degrees) => (degrees * Math.PI) / 180);
    return Array.from({ length: item.demand }, (_, copy) => ({
      id: `${item.id}-${copy + 1}`,
      outline,
      holes: [],
      anglesRad,
    }));
  });
  const stock = { kind: "roll", widthMm: container.width } as const;
  return { problem: { pieces, stock, clearanceMm: 0, marginMm: 0 }, areaMm2: totalArea };
}
