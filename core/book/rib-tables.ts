import { at, formatMm, formatNumber, toDegrees } from "../foundation/index.ts";
import type { Rib } from "../jig/index.ts";
import { halvedTable } from "./beside-columns.ts";
import { type Block, gapBlock, headingBlock, paragraphBlock, stackBlock, tableBlocks } from "./blocks.ts";
import { boxOf, heightOf, widthOf } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { lineMark, loopMark, paper, toPaper } from "./marks.ts";
import { CONTENT, CONTENT_WIDTH_MM } from "./page-frame.ts";
import { onView, type View } from "./plan-picture.ts";
import { type RibGroup, ribPlaceWords, ribSeenFrom, stationFacesWords } from "./rib-piece.ts";
import { standardScale } from "./scales.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

const MONO_END = { face: "mono", anchor: "end" } as const;

/** Ribs with a straight top need no template: one line each. */
export function cuttingList(groups: readonly RibGroup[], lettering: Lettering): readonly Block[] {
  const straight = groups.filter((group) => group.rib.straightTop);
  if (straight.length === 0) return [];
  const columns = [
    { title: "Ribs", widthMm: 30, face: "mono" as const },
    { title: "Pieces", widthMm: 16, ...MONO_END },
    { title: "Thick", widthMm: 16, ...MONO_END },
    { title: "Length", widthMm: 20, ...MONO_END },
    { title: "Height at station face, both ends", widthMm: 32, ...MONO_END },
    { title: "At other face, both ends", widthMm: 32, ...MONO_END },
    { title: "Hollows at", widthMm: 24, ...MONO_END },
  ];
  const rows = straight.map(({ rib, alike }) => {
    const box = boxOf(rib.outlineMm.map(toPaper));
    const [first, last] = [at(rib.heights, 0), at(rib.heights, -1)];
    return [
      alike.map((one) => one.id).join(" "),
      formatNumber(alike.length, 0),
      formatMm(rib.thicknessMm),
      formatMm(widthOf(box)),
      `${formatMm(first.stationFaceMm)} ${formatMm(last.stationFaceMm)}`,
      `${formatMm(first.farFaceMm)} ${formatMm(last.farFaceMm)}`,
      rib.reliefs.map(({ atMm }) => formatMm(atMm)).join(" "),
    ];
  });
  return [
    headingBlock("Cutting list: straight ribs, no template, mm"),
    ...tableBlocks(columns, rows, lettering),
  ];
}

/** What holds for the heights of all ribs, said once before them. */
export function ribHeightsWords(groups: readonly RibGroup[]): string {
  const cuts = new Set(groups.map(({ rib }) => rib.cut));
  const cut =
    cuts.size > 1
      ? "Where a table tells how the foam slopes, cut the top square to the station face's heights; where it tells a bevel, bevel the top."
      : cuts.has("square")
        ? "Cut the tops square to the station face's heights."
        : "Bevel the tops as listed.";
  return `Heights stand above the baseboard, at stations and where what the rib carries changes. ${cut} Read each table down the left, then down the right.`;
}

/** One group of ribs, on one page where it fits: a small drawing and the table of its heights. */
export function ribBlocks(group: RibGroup, lettering: Lettering): readonly Block[] {
  const { rib, alike } = group;
  const axis = rib.runs === "across" ? "y" : "x";
  const title = alike.map((one) => `${one.id} (${ribPlaceWords(one)})`).join(", ");
  const drawing = ribDrawing(rib);
  const columns = [
    { title: `Along,\u00a0${axis}`, widthMm: 30, ...MONO_END },
    { title: "Station face", widthMm: 30, ...MONO_END },
    { title: "Other face", widthMm: 30, ...MONO_END },
    { title: rib.cut === "square" ? "Foam slopes" : "Bevel", widthMm: 26, ...MONO_END },
    { title: "Carries", widthMm: 30, face: "mono" as const },
  ];
  const words = `1:${drawing.scale}, seen from the ${ribSeenFrom(rib)}. ${stationFacesWords(alike)}. ${cutWords(rib)}`;
  const head = stackBlock([
    headingBlock(`Rib ${title}`),
    drawing.block,
    paragraphBlock(words.trimEnd(), CONTENT_WIDTH_MM, lettering),
  ]);
  const freshMm = heightOf(CONTENT) - head.heightMm;
  return [
    { ...head, keepsWithNext: true },
    ...halvedTable(columns, heightRows(rib), { freshMm, lettering }),
    gapBlock(4),
  ];
}

/** The rows of heights as they print: places that print the same are one row, which names all that is carried there. */
function heightRows({ heights }: Rib): readonly (readonly string[])[] {
  const rows = new Map<string, { readonly figures: readonly string[]; readonly carries: string[] }>();
  for (const { atMm, stationFaceMm, farFaceMm, bevelRad, partId } of heights) {
    const slope = `${formatNumber(toDegrees(bevelRad), 1)}°`;
    const figures = [formatMm(atMm), formatMm(stationFaceMm), formatMm(farFaceMm), slope];
    const known = rows.get(figures.join(" "));
    if (known === undefined) rows.set(figures.join(" "), { figures, carries: [partId] });
    else if (!known.carries.includes(partId)) known.carries.push(partId);
  }
  return [...rows.values()].map(({ figures, carries }) => [...figures, carries.join(" ")]);
}

/** Less is printed as nothing, mm. */
const PRINTED_MM = 0.05;

/** What is cut out of a rib, and how it is made of pieces, in sentences; nothing for a plain one. */
function cutWords(rib: Rib): string {
  const { overBentMm } = rib;
  const axis = rib.runs === "across" ? "y" : "x";
  const places = (values: readonly number[]) => values.map((mm) => formatMm(mm)).join(", ");
  const { reliefs, notches, splices, pieces } = rib;
  const crossing = reliefs.filter(({ runs }) => runs === "across");
  const running = reliefs.filter(({ runs }) => runs === "along");
  const [splice] = splices;
  const way = splice?.way === "dovetail" ? "a dovetail" : "a plate over the joint";
  return [
    ...(overBentMm === undefined || Math.abs(overBentMm) < PRINTED_MM
      ? []
      : [
          `Over-bent for what is given back: its top stands ${formatMm(Math.abs(overBentMm))} mm ${overBentMm < 0 ? "lower" : "higher"} than drawn where it changes most. `,
        ]),
    ...(splice === undefined
      ? []
      : [
          `Cut in ${pieces.length} pieces (${pieces.map(({ id }) => id).join(", ")}), joined by ${way} at ${axis} ${places(splices.map(({ atMm }) => atMm))}. `,
        ]),
    ...(notches.length > 0
      ? [`Notches open upward for ${notches.map(({ fencePartId }) => fencePartId).join(", ")}. `]
      : []),
    ...(crossing.length > 0
      ? [
          `Hollows ${formatMm(crossing[0]?.widthMm ?? 0)} wide and half as deep under the joints at ${axis} ${places(crossing.map(({ atMm }) => atMm))}; tape the top there. `,
        ]
      : []),
    ...(running.length > 0
      ? [
          `A joint runs along in this rib: hollows ${formatMm(running[0]?.widthMm ?? 0)} long at ${axis} ${places(running.map(({ atMm }) => atMm))}; tape the whole top there, the land between them first, so that glue does not bond the tray to it. `,
        ]
      : []),
  ].join("");
}

function ribDrawing(rib: Rib): { readonly block: Block; readonly scale: number } {
  const outline = rib.outlineMm.map(toPaper);
  const box = boxOf(outline);
  const scale = standardScale(
    { widthMm: widthOf(box), heightMm: heightOf(box) },
    { widthMm: CONTENT_WIDTH_MM - 8, heightMm: 30 },
  );
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const view: View = { box, scale, corner: paper(corner.x + 2, corner.y - heightOf(box) / scale - 2) };
    const points = thin(outline.map((p) => onView(view, p)));
    const centre = onView(view, paper(0, box.bottom));
    const crossesCentre = rib.runs === "across" && box.left < 0 && box.right > 0;
    return [
      loopMark(points, "outline", "rib"),
      ...rib.holesMm.map((hole) => loopMark(thin(hole.map(toPaper).map((p) => onView(view, p))), "outline")),
      ...rib.splices.flatMap(({ atMm, plate, tailMm }) => [
        lineMark(
          [paper(atMm, box.bottom), ...(tailMm ?? []).map(toPaper), paper(atMm, box.top)].map((p) =>
            onView(view, p),
          ),
          "thin",
        ),
        ...(plate === undefined
          ? []
          : [
              loopMark(
                plate.outlineMm.map(toPaper).map((p) => onView(view, p)),
                "hidden",
              ),
            ]),
      ]),
      ...(crossesCentre
        ? [
            lineMark(
              [paper(centre.x, centre.y - 1.5), paper(centre.x, centre.y + heightOf(box) / scale + 1.5)],
              "centre",
            ),
          ]
        : []),
    ];
  };
  return { block: { heightMm: heightOf(box) / scale + 5, draw }, scale };
}
