import type { PlanPoint } from "../foundation/index.ts";
import { type MappedPly, mapWords, type PatchMap } from "../skins/index.ts";
import { type Block, gapBlock, headingBlock, paragraphBlock, togetherBlocks } from "./blocks.ts";
import { type Box, boxOf, heightOf, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { flowEvenly } from "./flow-evenly.ts";
import type { Lettering } from "./lettering.ts";
import { type LineMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM, contentOf, type PaperFormat, type SheetBody } from "./page-frame.ts";
import { patchMapMarks } from "./patch-map-marks.ts";
import { standardScale } from "./scales.ts";
import type { Mark } from "./types.ts";

/** Around a picture, for codes that find no room in their patch, mm. */
const MARGIN_MM = 9;
/** At a smaller scale than this the larger paper is taken: one to so many. */
const SMALLEST = 20;
/** As many plies of a face as this stand over each other on a page. */
const A_PAGE = 2;

/** Where every patch lies: the faces in plan, a picture for each ply; then what is drawn laid flat. None where it is not mapped. */
export function patchMapSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const plans = design.patchMaps.filter(({ frame }) => frame === "plan");
  const flats = design.patchMaps.filter(({ frame }) => frame === "flat");
  return [...plans.flatMap((map) => planPages(map, lettering)), ...flatPages(flats, lettering)];
}

function planPages(map: PatchMap, lettering: Lettering): readonly SheetBody[] {
  const box = boundsOf([map]);
  const roomOn = (format: PaperFormat) => {
    const area = contentOf(format);
    const count = format === "A4" ? A_PAGE : 1;
    return {
      widthMm: widthOf(area) - 2 * MARGIN_MM,
      heightMm: (heightOf(area) - 24) / count - 2 * MARGIN_MM - 8,
    };
  };
  const size = { widthMm: widthOf(box), heightMm: heightOf(box) };
  const format = standardScale(size, roomOn("A4")) > SMALLEST ? "A3" : "A4";
  const scale = standardScale(size, roomOn(format));
  const area = contentOf(format);
  const blocks: readonly Block[] = [
    paragraphBlock(`${mapWords(map)} ${KEY}`, widthOf(area), lettering),
    ...map.plies.flatMap((ply) => [
      {
        ...headingBlock(
          ply.name === `${ply.ply}` ? `Ply ${ply.ply} from the foam` : `Ply ${ply.ply}, ${ply.name}`,
        ),
        keepsWithNext: true as const,
      },
      pictureBlock({ map, ply, box, scale, widthMm: widthOf(area), lettering }),
    ]),
  ];
  return pagesOf(blocks, area, { title: `Patches, ${map.face}`, scale: `1:${scale}`, format });
}

const KEY =
  "Full lines: patches of cloth, in brackets the session that lays them; arrows run along the warp. Thin chain lines: joints and edges of the foam. Hatched one way: laps laid wet on wet; both ways: laps onto cured cloth.";

function flatPages(maps: readonly PatchMap[], lettering: Lettering): readonly SheetBody[] {
  if (maps.length === 0) return [];
  const box = boundsOf(maps);
  const room = { widthMm: CONTENT_WIDTH_MM - 2 * MARGIN_MM, heightMm: heightOf(CONTENT) / 3 };
  const scale = standardScale({ widthMm: widest(maps), heightMm: heightOf(box) }, room);
  const blocks: readonly Block[] = [
    paragraphBlock(`${FLAT_WORDS} ${KEY}`, CONTENT_WIDTH_MM, lettering),
    // All plies of a face on one page, under its name.
    ...maps.flatMap((map) =>
      togetherBlocks(
        [
          headingBlock(mapWords(map)),
          ...map.plies.map((ply) =>
            pictureBlock({ map, ply, box: boundsOf([map]), scale, widthMm: CONTENT_WIDTH_MM, lettering }),
          ),
          gapBlock(1),
        ],
        heightOf(CONTENT),
      ),
    ),
  ];
  return pagesOf(blocks, CONTENT, { title: "Patches, laid flat", scale: `1:${scale}`, format: "A4" });
}

const FLAT_WORDS =
  "Sides of fences, and what stands too steeply to be read in plan, laid flat and seen from the outer side. What runs over a joint or round an edge is drawn straight on. Dashed: cloth of the part beside, as far as it laps onto this one.";

const widest = (maps: readonly PatchMap[]): number =>
  Math.max(...maps.map((map) => widthOf(boundsOf([map]))));

const pagesOf = (
  blocks: readonly Block[],
  area: Box,
  { title, scale, format }: { readonly title: string; readonly scale: string; readonly format: PaperFormat },
): readonly SheetBody[] =>
  flowEvenly(blocks, area).map((marks) => ({ title, documentType: "patches", scale, format, marks }));

interface Picture {
  readonly map: PatchMap;
  readonly ply: MappedPly;
  readonly box: Box;
  readonly scale: number;
  readonly widthMm: number;
  readonly lettering: Lettering;
}

function pictureBlock({ map, ply, box, scale, widthMm, lettering }: Picture): Block {
  const [width, height] = [widthOf(box) / scale, heightOf(box) / scale];
  const isFlat = map.frame === "flat";
  const marginMm = isFlat ? FLAT_MARGIN_MM : MARGIN_MM;
  return {
    heightMm: height + 2 * marginMm,
    draw: (corner) => {
      const from = paper(
        isFlat ? corner.x + MARGIN_MM : corner.x + (widthMm - width) / 2,
        corner.y - marginMm - height,
      );
      const seen = ({ x, y }: PlanPoint) =>
        paper(from.x + (x - box.left) / scale, from.y + (y - box.bottom) / scale);
      const centre: readonly LineMark[] =
        !isFlat && box.bottom < 0 && box.top > 0
          ? [
              lineMark(
                [seen({ x: box.left - 4 * scale, y: 0 }), seen({ x: box.right + 4 * scale, y: 0 })],
                "centre",
              ),
            ]
          : [];
      const sides: readonly Mark[] = isFlat
        ? [textMark(paper(corner.x, from.y + height / 2 - 1.2), `${ply.ply}`, { face: "bold" })]
        : [textMark(paper(corner.x, from.y + height / 2 + 3), "front", {})];
      return [...centre, ...sides, ...patchMapMarks({ map, ply, seen, others: centre, lettering })];
    },
  };
}

const FLAT_MARGIN_MM = 5;

const boundsOf = (maps: readonly PatchMap[]): Box =>
  boxOf(
    maps.flatMap(({ grounds, plies }) => [
      ...grounds.flatMap(({ loopsMm }) => loopsMm.flat()),
      ...plies.flatMap(({ patches }) => patches.flatMap(({ loopsMm }) => loopsMm.flat())),
    ]),
  );
