import { formatNumber, toDegrees } from "../foundation/index.ts";
import { laminateOf } from "../project/index.ts";
import {
  clothNameOn,
  cornerWords,
  edgeWords,
  faceWords,
  filletWords,
  lapRows,
  patchesOfSession,
  patchWords,
  potWords,
  type SkinFace,
  type SkinSession,
  sessionWords,
  stackedWords,
  zoneRow,
  zoneWords,
} from "../skins/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { cautionBlocks } from "./cautions.ts";
import { counted } from "./counted.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";

/** The skins: for each face its plies, what is done in which order, and the sessions with their pots. */
export function skinSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const { faces, edges, solidHours, tasks } = design.skins;
  if (faces.length === 0) return [];
  const { resin, shopCelsius, hands, hardenerPer100 } = laminateOf(design.project);
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const ratio =
    hardenerPer100 === undefined
      ? "The mixing ratio is not typed yet: take it from the resin's data sheet, by mass, and type it under Skin. Without it nothing may be mixed."
      : `${formatNumber(hardenerPer100, 1)} parts of hardener to 100 of resin by mass, as you typed it from the data sheet. Weigh to 0.1 g; never change the ratio to change the speed.`;
  const blocks: readonly Block[] = [
    ...cautionBlocks(["epoxy", "foam dust", "fire"], lettering),
    gapBlock(2),
    text(
      `Resin: ${resin?.name ?? "none"}, in a shop of ${formatNumber(shopCelsius, 0)} °C, ${hands === 1 ? "one pair of hands" : `${formatNumber(hands, 0)} pairs of hands`}. ${ratio} Stir for 90 s, scrape sides and base, and pour it into a shallow tray at once: a full pot heats itself and can smoke. A face is solid after about ${formatNumber(solidHours, 0)} h at that temperature.`,
    ),
    text(
      `In the order of the work: ${tasks
        .filter(({ kind }) => kind !== "ready")
        .map(({ title }) => `${title[0]?.toLowerCase()}${title.slice(1)}`)
        .join("; ")}. The calendar shows what is glued in between.`,
    ),
    headingBlock("Edges, corners and fillets"),
    ...edges.map((one) => text(`${edgeWords(one)}`)),
    ...filletWords(design.skins).map(text),
    ...faces.flatMap(({ face, corners }) =>
      corners.map((corner) => text(`${face[0]?.toUpperCase()}${face.slice(1)}. ${cornerWords(corner)}`)),
    ),
    ...faces.flatMap((face) => faceBlocks(face, lettering)),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Skins",
    documentType: "skins",
    scale: "none",
    marks,
  }));
}

function faceBlocks(face: SkinFace, lettering: Lettering): readonly Block[] {
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const figure = { widthMm: 26, face: "mono" as const, anchor: "end" as const };
  return [
    headingBlock(
      `${face.face[0]?.toUpperCase()}${face.face.slice(1)}, ${formatNumber(face.areaMm2 / 1e6, 2)} m²`,
    ),
    text(faceWords(face)),
    ...tableBlocks(
      [
        { title: "Ply, from the foam", widthMm: 30 },
        { title: "Cloth", widthMm: 60 },
        { title: "Warp", ...figure },
        { title: "Cloth g/m²", ...figure },
        { title: "Resin g/m²", ...figure },
      ],
      face.plies.map(({ clothName, warpRad, clothKgPerM2, resinKgPerM2 }, i) => [
        `${i + 1}`,
        clothName,
        `${formatNumber(toDegrees(warpRad), 0)}°`,
        formatNumber(clothKgPerM2 * 1000, 0),
        formatNumber(resinKgPerM2 * 1000, 0),
      ]),
      lettering,
    ),
    ...zoneBlocks(face, lettering),
    gapBlock(1.5),
    ...sessionBlocks(face, lettering),
    gapBlock(3),
  ];
}

/** The reinforcement of a face: what it is, how thick it gets, and what wants care. */
function zoneBlocks(face: SkinFace, lettering: Lettering): readonly Block[] {
  if (face.zones.length === 0) return [];
  const figure = { widthMm: 20, face: "mono" as const, anchor: "end" as const };
  return [
    headingBlock("Reinforcement"),
    ...tableBlocks(
      [
        { title: "Zone", widthMm: 46 },
        { title: "Laid with", widthMm: 24, face: "mono" },
        { title: "Plies", ...figure, widthMm: 14 },
        { title: "Step mm", ...figure, widthMm: 18 },
        { title: "Cloth m²", ...figure },
        { title: "Adds mm", ...figure, widthMm: 18 },
        { title: "In all mm", ...figure, widthMm: 18 },
        { title: "Adds g", ...figure, widthMm: 16 },
      ],
      face.zones.map((zone) => {
        const { name, field, plies, step, area, adds, all, mass } = zoneRow(zone);
        return [name, field, plies, step, area, adds, all, mass];
      }),
      lettering,
    ),
    ...face.zones.flatMap(zoneWords).map((words) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering)),
  ];
}

/** How long the seams are where a session laps onto what has cured; nothing where no session does. */
const seamWords = ({ sessionSeamMm }: SkinFace): string =>
  sessionSeamMm < 5 ? "" : `, ${formatNumber(sessionSeamMm / 1000, 2)} m of seams between them`;

function sessionBlocks(face: SkinFace, lettering: Lettering): readonly Block[] {
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  if (face.sessions.length === 0)
    return [
      text("No session is planned: this resin does not go with the shop or the foam. The problems say why."),
    ];
  return [
    text(
      `${counted(face.sessions.length, "session")}${seamWords(face)}. A patch is named by part, face and field, and its ply from the foam.`,
    ),
    ...lapTable(face, lettering),
    ...stackedWords(face).map(text),
    ...face.sessions.flatMap((session, i) => [
      headingBlock(`${face.face[0]?.toUpperCase()}${face.face.slice(1)}, session ${i + 1}`),
      text(sessionWords(session)),
      ...session.steps.map(({ title, why }, k) => text(`${k + 1}. ${title}. ${why}`)),
      ...potTable(session, lettering),
      gapBlock(1.5),
      ...patchTable(face, session, lettering),
      gapBlock(2),
    ]),
  ];
}

/** Which cloth goes down first beside each joint, which over it, and where they lap. */
function lapTable(face: SkinFace, lettering: Lettering): readonly Block[] {
  if (face.laps.length === 0) return [];
  return [
    headingBlock("Laps beside joints"),
    ...tableBlocks(
      [
        { title: "Joint", widthMm: 27, face: "mono" },
        { title: "Ply", widthMm: 10, face: "mono" },
        { title: "First", widthMm: 24, face: "mono" },
        { title: "Over it", widthMm: 24, face: "mono" },
        { title: "On", widthMm: 13, face: "mono" },
        { title: "Beyond it, mm", widthMm: 34, face: "mono" },
        { title: "", widthMm: 42 },
      ],
      lapRows(face).map(({ joint, ply, first, over, lies, fromTo, note }) => [
        joint,
        ply,
        first,
        over,
        lies,
        fromTo,
        note,
      ]),
      lettering,
    ),
    gapBlock(1.5),
  ];
}

function potTable({ cards }: SkinSession, lettering: Lettering): readonly Block[] {
  const figure = { widthMm: 28, face: "mono" as const, anchor: "end" as const };
  return tableBlocks(
    [
      { title: "Pots", ...figure },
      { title: "Mix in each", ...figure },
      { title: "Resin", ...figure },
      { title: "Hardener", ...figure },
      { title: "Pigment", ...figure },
      { title: "Spread within", ...figure },
    ],
    cards.map((card) => {
      const { pots, each, resin, hardener, pigment, within } = potWords(card);
      return [pots, each, resin, hardener, pigment, within];
    }),
    lettering,
  );
}

function patchTable(face: SkinFace, session: SkinSession, lettering: Lettering): readonly Block[] {
  const figure = { widthMm: 26, face: "mono" as const, anchor: "end" as const };
  return tableBlocks(
    [
      { title: "Patch", widthMm: 40, face: "mono" },
      { title: "Ply", ...figure, widthMm: 14 },
      { title: "Cloth", widthMm: 50 },
      { title: "Warp", ...figure, widthMm: 16 },
      { title: "Along × across", ...figure, widthMm: 34 },
      { title: "m²", ...figure, widthMm: 20 },
    ],
    patchesOfSession(face, session).map((patch) => {
      const { code, ply, warp, size, area } = patchWords(patch);
      return [code, ply, clothNameOn(face, patch.clothId), warp, size, area];
    }),
    lettering,
  );
}
