import { formatNumber } from "../foundation/index.ts";
import { laminateOf } from "../project/index.ts";
import { PEEL_PLY_WIDTH_MM, peelPlyMm } from "../skins/index.ts";
import type { Bench, Need } from "./types.ts";

/** What is squeezed out, wiped off and left in the bottle: as much again as stays in the joints (common practice). */
const GLUE_TIMES = 2;
/** Where no cloth is laid out, offcuts take so much more than the pieces (common practice). */
const CLOTH_TIMES = 1.1;
/** Packs as they are sold in shops, kg; cloth and peel ply are sold by the metre (common practice). */
const PACK_KG = { glue: 0.25, resin: 1, hardener: 0.5, pigment: 0.1 } as const;

/** Sheets of foam, metal and rib board: as laid out, else the least by area. */
export function sheetNeeds({ project, totals, plates, stock }: Bench): readonly Need[] {
  const laid = (stockId: string) =>
    stock.flatMap(({ sheets }) => sheets).filter((sheet) => sheet.stockId === stockId).length;
  const board = project.materials.boards.find(({ id }) => id === project.jig.boardId);
  return [
    ...totals.stock.map(
      ({ stockId, name, sheetsAtLeast }): Need => ({
        ...pieces(`stock ${stockId}`, name, Math.max(sheetsAtLeast, laid(stockId))),
        priceEach: project.stock.find(({ id }) => id === stockId)?.priceEach,
      }),
    ),
    ...plates.flatMap(({ metalName, thicknessMm, parts }) =>
      parts.map(({ id, lengthMm, widthMm }) =>
        pieces(
          `metal ${id}`,
          `${metalName}, ${formatNumber(thicknessMm, 1)} mm, ${formatNumber(Math.ceil(lengthMm), 0)} × ${formatNumber(Math.ceil(widthMm), 0)}, for ${id}`,
          1,
        ),
      ),
    ),
    ...(totals.ribBoardAreaMm2 > 0
      ? [
          {
            ...pieces(
              `board ${project.jig.boardId}`,
              board?.name ?? "Rib board",
              Math.max(totals.ribBoardsAtLeast, laid(project.jig.boardId)),
            ),
            priceEach: board?.priceEach,
          },
        ]
      : []),
  ];
}

const pieces = (key: string, name: string, needed: number): Need => ({
  key,
  name,
  unit: "pieces",
  needed,
  packOf: 1,
});

/** Glue for the joints. */
export function glueNeeds({ project, totals }: Bench): readonly Need[] {
  const { glueId } = project.glue;
  const glue = project.materials.glues.find(({ id }) => id === glueId);
  const needed = GLUE_TIMES * totals.glueMassKg;
  return [{ key: `glue ${glueId}`, name: glue?.name ?? "Glue", unit: "kg", needed, packOf: PACK_KG.glue }];
}

/** Cloth of each kind off its roll, as laid out where it is, and peel ply. */
export function clothNeeds({ project, skins, panels, cloth }: Bench): readonly Need[] {
  const ofPanels = [
    ...panels.panels.flatMap(({ cloths }) => cloths),
    ...panels.bonds.map(({ tapeName, tapeMm2 }) => ({ name: tapeName, areaMm2: tapeMm2 })),
  ];
  const needs = project.materials.cloths.map(({ id, name, rollWidthMm }): Need => {
    const laid = cloth.find(({ clothId }) => clothId === id);
    const widthMm = laid?.widthMm ?? rollWidthMm;
    const metres = (areaMm2: number) => (CLOTH_TIMES * areaMm2) / widthMm / 1000;
    const onFaces = skins.cloths.find(({ clothId }) => clothId === id)?.areaMm2 ?? 0;
    const needed =
      (laid ? laid.rollMm / 1000 : metres(onFaces)) +
      metres(sum(ofPanels.filter((one) => one.name === name).map(({ areaMm2 }) => areaMm2)));
    return {
      key: `cloth ${id}`,
      name: `${name}, roll of ${formatNumber(widthMm, 0)} mm`,
      unit: "m",
      needed,
      packOf: 1,
    };
  });
  const peelMm =
    peelPlyMm(skins) +
    (CLOTH_TIMES * sum(panels.panels.map(({ peelPlyMm2 }) => peelPlyMm2))) / PEEL_PLY_WIDTH_MM;
  return [
    ...needs,
    {
      key: "peel ply",
      name: `Peel ply, roll of ${formatNumber(PEEL_PLY_WIDTH_MM, 0)} mm`,
      unit: "m",
      needed: peelMm / 1000,
      packOf: 1,
    },
  ];
}

/** Resin and hardener by the ratio that is typed, as one mix where none is; and pigment. */
export function resinNeeds({ project, skins, panels }: Bench): readonly Need[] {
  const { resin, hardenerPer100, pigmentShare } = laminateOf(project);
  const name = resin?.name ?? "Resin";
  const id = resin?.id ?? "none";
  const mixedKg = skins.mixedKg + sum([...panels.panels, ...panels.bonds].map((one) => one.mixedKg));
  const pigmentKg = pigmentShare * mixedKg;
  const clearKg = mixedKg - pigmentKg;
  const kg = (key: string, words: string, needed: number, packOf: number): Need => ({
    key,
    name: words,
    unit: "kg",
    needed,
    packOf,
  });
  const ofMix =
    hardenerPer100 === undefined
      ? [kg(`mix ${id}`, `${name}, resin and hardener`, clearKg, PACK_KG.resin)]
      : [
          kg(`resin ${id}`, `${name}: resin`, (clearKg * 100) / (100 + hardenerPer100), PACK_KG.resin),
          kg(
            `hardener ${id}`,
            `${name}: hardener`,
            (clearKg * hardenerPer100) / (100 + hardenerPer100),
            PACK_KG.hardener,
          ),
        ];
  return [...ofMix, kg("pigment", "Pigment paste for epoxy", pigmentKg, PACK_KG.pigment)];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
