import { at } from "../foundation/index.ts";
import { breakLines } from "./blocks.ts";
import { type Box, boxOf, type Grid, gridIn, heightOf, placesOf, widthOf } from "./boxes.ts";
import { cuttingWords } from "./cutting-words.ts";
import { gaugeMarks } from "./gauge-marks.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, filledMark, lineMark, paper, textMark } from "./marks.ts";
import { GAUGE_INSET_MM, leastWindowHeight, type PageWindow } from "./page-window.ts";
import { shorten } from "./shorten.ts";
import type { TemplateLayout, Tile } from "./template-layouts.ts";
import { BOARD_WORDS, PRINT_WORDS, type TemplateSetting } from "./template-setting.ts";
import { thin } from "./thin-points.ts";
import type { DrawingPage, LineStyle, Mark, PaperPoint } from "./types.ts";

/** The smallest picture of a layout on the map, mm. */
const CELL_WIDTH_MM = 55;
const CELL_HEIGHT_MM = 42;

/** How the layouts are spread over map pages. */
const mapGrid = (window: PageWindow): Grid =>
  gridIn(mapArea(window, mapHeight(window)), CELL_WIDTH_MM, CELL_HEIGHT_MM, 0);

/** Map pages that a number of layouts needs; at least one. */
export const mapPageCount = (layoutCount: number, window: PageWindow): number =>
  Math.max(1, Math.ceil(layoutCount / placesOf(mapGrid(window))));

/** The first pages of the templates: which pages there are, how they lie, what is on them, and the line types. */
export function tileMapPages(
  layouts: readonly TemplateLayout[],
  firstPages: readonly number[],
  setting: TemplateSetting,
): readonly DrawingPage[] {
  const { window } = setting;
  const grid = mapGrid(window);
  const perPage = placesOf(grid);
  const count = mapPageCount(layouts.length, window);
  return Array.from({ length: count }, (_, page) => {
    const heightMm = mapHeight(window);
    const shown = layouts.slice(page * perPage, (page + 1) * perPage);
    return {
      name: count === 1 ? "Map of pages" : `Map of pages ${page + 1}`,
      widthMm: window.paperWidthMm,
      heightMm,
      marks: [
        ...mapHeading(page + 1, heightMm, setting),
        ...shown.flatMap((layout, i) =>
          layoutPicture(layout, at(firstPages, page * perPage + i), {
            cell: mapCell(mapArea(window, heightMm), grid, i),
            setting,
          }),
        ),
        ...gaugeMarks(window),
        ...legend(window, setting.lettering),
      ],
    };
  });
}

/** A roll gives the map a page as long as an A3 is high at most. */
export const mapHeight = (window: PageWindow): number =>
  window.cutToLength
    ? Math.max(420, leastWindowHeight(window) + 2 * window.marginMm + 60)
    : window.paperHeightMm;

/** Where the pictures lie: between the heading and the square with the legend. */
export function mapArea(window: PageWindow, heightMm: number): Box {
  const gaugesTop = window.marginMm + window.overlapMm + GAUGE_INSET_MM + 8 + 104;
  return {
    left: window.marginMm + window.overlapMm + 10,
    right: window.paperWidthMm - window.marginMm,
    bottom: gaugesTop,
    top: heightMm - window.marginMm - 24,
  };
}

function mapCell(area: Box, grid: Grid, index: number): Box {
  const [width, height] = [widthOf(area) / grid.columns, heightOf(area) / grid.rows];
  const left = area.left + (index % grid.columns) * width;
  const top = area.top - Math.floor(index / grid.columns) * height;
  return { left: left + 2, right: left + width - 4, bottom: top - height + 2, top };
}

function mapHeading(page: number, heightMm: number, setting: TemplateSetting): readonly Mark[] {
  const { window, lettering } = setting;
  const [left, right, top] = [
    window.marginMm,
    window.paperWidthMm - window.marginMm,
    heightMm - window.marginMm,
  ];
  const count = `page ${page} of ${setting.pageCount}`;
  const roomMm = right - left - lettering.widthMm(count, "sans", 3.5) - 5;
  return [
    textMark(paper(left, top - 6), shorten(setting.title, "bold", 5, { lettering, roomMm }), {
      heightMm: 5,
      face: "bold",
    }),
    textMark(paper(right, top - 6), count, { heightMm: 3.5, anchor: "end" }),
    textMark(paper(left, top - 12), "Templates at full size: how the pages lie", { heightMm: 3.5 }),
    textMark(paper(left, top - 17), `${PRINT_WORDS}.`),
    textMark(paper(left, top - 22), cuttingWords(setting.cutting)),
  ];
}

/** One layout in small: outlines, the printed pages with their names, and what to tape. */
function layoutPicture(
  layout: TemplateLayout,
  firstPage: number,
  place: { readonly cell: Box; readonly setting: TemplateSetting },
): readonly Mark[] {
  const { cell, setting } = place;
  const { window, lettering } = setting;
  const whole = boxOf(layout.tiles.flatMap((tile) => tileCorners(tile, layout, window)));
  const room = { left: cell.left, right: cell.right, bottom: cell.bottom, top: cell.top - 11 };
  const scale = Math.min(widthOf(room) / widthOf(whole), heightOf(room) / heightOf(whole));
  const put = (p: PaperPoint) =>
    paper(room.left + (p.x - whole.left) * scale, room.top + (p.y - whole.top) * scale);
  const fit = { lettering, roomMm: widthOf(cell) };
  const last = firstPage + layout.tiles.length - 1;
  const pages = layout.tiles.length === 1 ? `page ${firstPage}` : `pages ${firstPage} to ${last}`;
  const ids = layout.pieces.map((placed) => placed.piece.id).join(" ");
  const bands = layout.tiles.map((tile) => tileCorners(tile, layout, window).map(put));
  return [
    textMark(
      paper(cell.left, cell.top - 3.5),
      shorten(`Layout ${layout.number}: ${pages}`, "bold", 2.5, fit),
      {
        face: "bold",
      },
    ),
    textMark(paper(cell.left, cell.top - 8), shorten(ids, "mono", 2.5, fit), { face: "mono" }),
    ...layout.pieces.flatMap((placed) =>
      placed.lines
        .filter((line) => line.style === "cut")
        .map((line) => ({ ...line, points: thin(line.points.map(put)), style: "thin" as const })),
    ),
    ...bands.flatMap((corners, i): readonly Mark[] =>
      nameOnWhite(boxOf(corners), at(layout.tiles, i).name, lettering),
    ),
    // Over the white of the names, which is wider than a narrow page.
    ...bands.map((corners) => {
      const box = boxOf(corners);
      return boxMark(paper(box.left, box.bottom), widthOf(box), heightOf(box), "register");
    }),
  ];
}

/** The name in the middle of a page, on white, so that no line runs through it. */
function nameOnWhite(page: Box, name: string, lettering: Lettering): readonly Mark[] {
  const [x, y] = [(page.left + page.right) / 2, (page.bottom + page.top) / 2];
  const half = lettering.widthMm(name, "mono", 2.5) / 2 + 0.5;
  const corners = [
    paper(x - half, y - 1.6),
    paper(x + half, y - 1.6),
    paper(x + half, y + 2),
    paper(x - half, y + 2),
  ];
  return [
    filledMark(corners, "paper", "register"),
    textMark(paper(x, y - 1), name, { face: "mono", anchor: "middle" }),
  ];
}

const tileCorners = (tile: Tile, layout: TemplateLayout, window: PageWindow): readonly PaperPoint[] => [
  tile.origin,
  paper(tile.origin.x + window.widthMm, tile.origin.y + layout.windowHeightMm),
];

const LEGEND: readonly (readonly [LineStyle, string])[] = [
  ["cut", `cut line, as said above; ${BOARD_WORDS}`],
  [
    "thin",
    "finished outline at mid-thickness; mark at a joint; in pairs: slot; cross with figures: where a page is laid",
  ],
  ["hidden", "a rib or fence lies here; in pairs: slot in the face behind"],
  ["fold", "a bend starts, ends or runs here; on metal its middle"],
  ["station", "station, its number at the end; short: extra mark"],
  ["centre", "datum of the marking-out table; centre line of the car"],
  ["register", "this square, the bar, crosses without figures: for taping"],
];

const STEPS = [
  "1 Measure square and bar. Off by more than 0.5 mm in 200: enter both readings under Print, print again.",
  "2 Trim, lay cross on cross, tape; measure the long bar whole: over 1 mm off, lay them anew. A page without neighbours is laid by its crosses with figures, measured from the start of the datum; on a rib y or x, and h from its base.",
  "3 Check: words up, arrow forward, hand.",
  "4 Damp air stretches paper, mostly across its grain, 2 to 3 mm a metre for 10 % of humidity: a day in the shop, check the bar again, cut the same day.",
];

const LEGEND_STEP_MM = 3.7;

/** The line types and the steps of the work, inside the 100 mm square. */
function legend(window: PageWindow, lettering: Lettering): readonly Mark[] {
  const square = gaugeSquare(window);
  const left = square.left + 3;
  let top = square.top - 5;
  const marks: Mark[] = [];
  const write = (words: string, indentMm: number) => {
    const roomMm = square.right - left - indentMm - 2;
    for (const line of breakLines(words, roomMm, lettering, { face: "sans", heightMm: 2.5 })) {
      marks.push(textMark(paper(left + indentMm, top), line, { layer: "legend" }));
      top -= LEGEND_STEP_MM;
    }
  };
  for (const [style, words] of LEGEND) {
    marks.push(lineMark([paper(left, top + 0.9), paper(left + 12, top + 0.9)], style, "legend"));
    write(words, 14);
  }
  for (const words of STEPS) write(words, 0);
  return marks;
}

function gaugeSquare(window: PageWindow): Box {
  const square = gaugeMarks(window).find((mark) => mark.kind === "line" && mark.points.length === 5);
  return boxOf(square?.kind === "line" ? square.points : []);
}
