import { at, formatMm } from "../foundation/index.ts";
import { foamOf } from "../project/index.ts";
import type { Solid } from "../solids/index.ts";
import { BALLOON_ROW_MM, balloonMarks, type NamedPlace } from "./balloons.ts";
import { type Block, flowBlocks, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { type Box, boxOf, heightOf, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { type Eye, seeFrom } from "./eye.ts";
import { hiddenIn, type SeenBody, visibleLines } from "./hidden-lines.ts";
import type { Lettering } from "./lettering.ts";
import { lineMark, paper } from "./marks.ts";
import { triplesOf } from "./mesh-lists.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";
import type { Mark, PaperPoint } from "./types.ts";

const DEGREE = Math.PI / 180;
const FROM_ABOVE: Eye = { towardFrontRad: 32 * DEGREE, upRad: 32 * DEGREE };
const FROM_BELOW: Eye = { towardFrontRad: 32 * DEGREE, upRad: -28 * DEGREE };
/** Hidden lines are looked for at this distance on paper, mm. */
const LOOK_PAPER_MM = 0.5;
const PICTURE_HEIGHT_MM = 92;
const APART_HEIGHT_MM = 130;

/** The tray as a picture, from above and from below; then drawn apart, each part with its code, and the list of parts. */
export function pictureSheets(
  design: Design,
  solids: readonly Solid[],
  lettering: Lettering,
): readonly SheetBody[] {
  if (solids.length === 0) return [];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const whole = flowBlocks(
    [
      headingBlock("The bare tray from the left, from above"),
      wholeBlock(solids, FROM_ABOVE),
      headingBlock("The same from below"),
      wholeBlock(solids, FROM_BELOW),
      text("Front to the left. Not to a scale: lengths are taken from the drawings, never from a picture."),
    ],
    CONTENT,
  );
  const apart = flowBlocks(
    [headingBlock("The parts, drawn apart"), apartBlock(solids, lettering), ...partTable(design, lettering)],
    CONTENT,
  );
  const sheet = (title: string) => (marks: readonly Mark[]) => ({
    title,
    documentType: "arrangement",
    scale: "none",
    marks,
  });
  return [...whole.map(sheet("The tray as a picture")), ...apart.map(sheet("Parts and their codes"))];
}

/** A solid as it is seen, moved by `away` of the way that it goes when the tray is drawn apart. */
function seenBody(solid: Solid, eye: Eye, away: number): SeenBody {
  const see = seeFrom(eye);
  const { apart } = solid;
  const spots = triplesOf(solid.positions).map(([x, y, z]) =>
    see({ x: x + apart.x * away, y: y + apart.y * away, z: z + apart.z * away }),
  );
  return { spots, triangles: solid.triangles, outline: solid.outline };
}

/** A picture that fits a width and a height: its bodies, and the way from the picture onto paper. */
interface Picture {
  readonly bodies: readonly SeenBody[];
  readonly perMm: number;
  readonly box: Box;
}

function pictureOf(bodies: readonly SeenBody[], widthMm: number, heightMm: number): Picture {
  const box = boxOf(bodies.flatMap(({ spots }) => spots.map(({ x, y }) => paper(x, y))));
  const perMm = Math.min(widthMm / (widthOf(box) || 1), heightMm / (heightOf(box) || 1));
  return { bodies, perMm, box };
}

const onPaper =
  ({ box, perMm }: Picture, corner: PaperPoint) =>
  (p: PaperPoint): PaperPoint =>
    paper(corner.x + (p.x - box.left) * perMm, corner.y + (p.y - box.bottom) * perMm);

/** Lower left corner of a picture in the middle of a block. */
const cornerIn = ({ box, perMm }: Picture, block: PaperPoint, heightMm: number): PaperPoint =>
  paper(
    block.x + (CONTENT_WIDTH_MM - widthOf(box) * perMm) / 2,
    block.y - (heightMm + heightOf(box) * perMm) / 2,
  );

const lineMarks = (picture: Picture, put: (p: PaperPoint) => PaperPoint): readonly Mark[] =>
  visibleLines(picture.bodies, LOOK_PAPER_MM / picture.perMm).map((line) =>
    lineMark(line.map(put), "thin", "picture"),
  );

function wholeBlock(solids: readonly Solid[], eye: Eye): Block {
  const picture = pictureOf(
    solids.map((solid) => seenBody(solid, eye, 0)),
    CONTENT_WIDTH_MM - 4,
    PICTURE_HEIGHT_MM - 4,
  );
  const heightMm = Math.min(PICTURE_HEIGHT_MM, heightOf(picture.box) * picture.perMm + 8);
  return {
    heightMm,
    draw: (corner) => lineMarks(picture, onPaper(picture, cornerIn(picture, corner, heightMm))),
  };
}

function apartBlock(solids: readonly Solid[], lettering: Lettering): Block {
  const picture = pictureOf(
    solids.map((solid) => seenBody(solid, FROM_ABOVE, 1)),
    CONTENT_WIDTH_MM - 8,
    APART_HEIGHT_MM - 2 * BALLOON_ROW_MM,
  );
  const heightMm = heightOf(picture.box) * picture.perMm + 2 * BALLOON_ROW_MM + 4;
  return {
    heightMm,
    draw: (corner) => {
      const low = cornerIn(picture, corner, heightMm);
      const put = onPaper(picture, low);
      const places = placesOf(solids, picture).map(({ code, at: p }) => ({ code, at: put(p) }));
      const row = { left: corner.x, right: corner.x + CONTENT_WIDTH_MM };
      return [...lineMarks(picture, put), ...balloonMarks(places, paperBox(picture, low), row, lettering)];
    },
  };
}

const paperBox = ({ box, perMm }: Picture, low: PaperPoint): Box => ({
  left: low.x,
  bottom: low.y,
  right: low.x + widthOf(box) * perMm,
  top: low.y + heightOf(box) * perMm,
});

/** For each part a place on a face of it that is seen, near the middle of what is seen of it. */
function placesOf(solids: readonly Solid[], picture: Picture): readonly NamedPlace[] {
  const isHidden = hiddenIn(picture.bodies);
  return [...new Set(solids.map(({ partId }) => partId))].map((code) => {
    const spots = solids.flatMap((solid, i) => {
      if (solid.partId !== code) return [];
      const { spots: own, triangles } = at(picture.bodies, i);
      return triplesOf(triangles).flatMap(([a, b, c]) => {
        const [p, q, r] = [at(own, a), at(own, b), at(own, c)];
        const area = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
        const mean = (pick: (s: typeof p) => number) => (pick(p) + pick(q) + pick(r)) / 3;
        const middle = { x: mean((s) => s.x), y: mean((s) => s.y), nearer: mean((s) => s.nearer) };
        return area > 0 && !isHidden(middle) ? [{ middle, area }] : [];
      });
    });
    const all = spots.reduce((sum, { area }) => sum + area, 0) || 1;
    const centre = spots.reduce(
      (sum, { middle, area }) => paper(sum.x + (middle.x * area) / all, sum.y + (middle.y * area) / all),
      paper(0, 0),
    );
    const off = ({ middle }: (typeof spots)[number]) => Math.hypot(middle.x - centre.x, middle.y - centre.y);
    const best = [...spots].sort((a, b) => off(a) - off(b))[0];
    return {
      code,
      at: best === undefined ? centreOf(solids, picture, code) : paper(best.middle.x, best.middle.y),
    };
  });
}

/** Where nothing of a part is seen, the middle of it. */
function centreOf(solids: readonly Solid[], picture: Picture, code: string): PaperPoint {
  const box = boxOf(
    solids.flatMap((solid, i) =>
      solid.partId === code ? at(picture.bodies, i).spots.map(({ x, y }) => paper(x, y)) : [],
    ),
  );
  return paper((box.left + box.right) / 2, (box.bottom + box.top) / 2);
}

function partTable(design: Design, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Code", widthMm: 16, face: "mono" as const },
    { title: "Name", widthMm: 44 },
    { title: "Made of", widthMm: 38 },
    { title: "Thick", widthMm: 14, face: "mono" as const, anchor: "end" as const },
    { title: "Cut as", widthMm: 62, face: "mono" as const },
  ];
  const foam = design.parts.map((part) => [
    part.id,
    part.name,
    foamOf(design.project, part.foamId)?.name ?? part.foamId,
    formatMm(part.thicknessMm),
    design.strips
      .filter(({ partId }) => partId === part.id)
      .map(({ id }) => id)
      .join(" "),
  ]);
  const metal = design.plates.flatMap((plate) =>
    plate.parts.map((part) => [part.id, plate.name, plate.metalName, formatMm(plate.thicknessMm), part.id]),
  );
  return tableBlocks(columns, [...foam, ...metal], lettering);
}
