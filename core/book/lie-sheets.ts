import { formatMm, formatNumber, THIN_SPACE, toDegrees } from "../foundation/index.ts";
import { type AsBuilt, type LieLimit, type LieLine, wordOpenings, wordPast } from "../jig/index.ts";
import { besideColumns } from "./beside-columns.ts";
import {
  type Block,
  flowBlocks,
  gapBlock,
  headingBlock,
  heightOfAll,
  paragraphBlock,
  tableBlocks,
} from "./blocks.ts";
import { heightOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { liePicture, signedMm } from "./lie-picture.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";

const FIGURE = { face: "mono", anchor: "end" } as const;

const LIMIT_WORDS = {
  shape: "the shape that the skin freezes",
  give: "how far a push makes it give",
  strain: "how a push strains the foam",
} as const satisfies Record<LieLimit, string>;

/** How the foam lies on the ribs, what every rib gives, and the table to check the laid foam by. */
export function lieSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const { lie } = design;
  if (lie.lines.length === 0) return [];
  const pictures = lie.worst
    .flatMap(({ partId }) => worstLine(lie.lines, partId))
    .map((line) => ({
      line,
      ...liePicture(line, lie.settings.toleranceMm),
    }));
  const blocks: readonly Block[] = [
    headingBlock("How the foam lies on the ribs, seen from the side"),
    paragraphBlock(wordsOf(design), CONTENT_WIDTH_MM, lettering),
    ...pictures.flatMap(({ line, block, scale }) => [
      {
        ...headingBlock(`${line.partId} where it lies farthest off, 1:${scale}`),
        keepsWithNext: true as const,
      },
      block,
    ]),
    ...wordOpenings(lie).map((words) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering)),
    ...lie.pasts.map((past) =>
      paragraphBlock(`${past.partIds.join(", ")}: ${wordPast(past)}`, CONTENT_WIDTH_MM, lettering),
    ),
    headingBlock("What every rib gives"),
    ...ribTable(design, lettering),
  ];
  const checkHead: readonly Block[] = [
    headingBlock("Check the laid foam: height of its upward face above the baseboard, mm"),
    paragraphBlock(
      "Lay and hold the foam, then measure at these places before the skin goes on. Type what you measure on the Jig page: it tells how the whole stands, and which rib to shim.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
  const roomMm = heightOf(CONTENT) - heightOfAll(checkHead);
  const check: readonly Block[] = [
    ...checkHead,
    ...checkTable(design, roomMm, lettering),
    ...(lie.asBuilt ? shimBlocks(lie.asBuilt, lettering) : []),
  ];
  return [
    ...flowBlocks(blocks, CONTENT).map((marks) => ({
      title: "Foam on the ribs",
      documentType: "jig",
      scale: "as noted",
      marks,
    })),
    ...flowBlocks(check, CONTENT).map((marks) => ({
      title: "Check as built",
      documentType: "jig",
      scale: "none",
      marks,
    })),
  ];
}

/** The line of a part on which it lies farthest off. */
function worstLine(lines: readonly LieLine[], partId: string): readonly LieLine[] {
  const off = ({ stations }: LieLine) => Math.max(...stations.map(({ errorMm }) => Math.abs(errorMm)));
  return lines
    .filter((line) => line.partId === partId)
    .sort((a, b) => off(b) - off(a))
    .slice(0, 1);
}

function wordsOf({ lie }: Design): string {
  const { toleranceMm, pushN, wetKgPerM2 } = lie.settings;
  const [worst] = lie.worst;
  const most = worst
    ? `At worst it lies ${formatMm(Math.abs(worst.errorMm))} mm ${worst.errorMm > 0 ? "above" : "below"} its shape (${worst.partId}, x ${formatMm(worst.at.x)}, y ${formatMm(worst.at.y)}); ${formatMm(toleranceMm)} mm are allowed.`
    : "";
  const without = lie.pasts.length > 0 ? " Dashed: as the foam would lie if it ended at the trim line." : "";
  return `Thin: as drawn. Thick: as it lies, so that ${formatMm(toleranceMm)} mm show as 3 mm. The strip below is hatched the closer the farther the foam lies off, with the worst of each stretch in mm, above is plus. Reckoned as a strip of bare foam under ${formatNumber(wetKgPerM2, 2)} kg/m² of wet skin, held on every rib. ${most} A hand's push of ${formatNumber(pushN, 0)} N shifts no shape, but do not lean on it harder.${without}`;
}

function ribTable({ lie, jig }: Design, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Rib", widthMm: 18, face: "mono" as const },
    { title: "Foam presses, N", widthMm: 30, ...FIGURE },
    { title: "Hold down, N", widthMm: 30, ...FIGURE },
    { title: "Asks for a rib beside it first", widthMm: 62 },
    { title: "Of what is allowed", widthMm: 34, ...FIGURE },
  ];
  const rows = jig.ribs.flatMap(({ id }) => {
    const limit = lie.limits.find(({ ribId }) => ribId === id);
    if (!limit) return [];
    const sum = (of: "pressN" | "holdDownN") =>
      lie.forces.filter(({ ribId }) => ribId === id).reduce((total, one) => total + one[of], 0);
    const holdN = sum("holdDownN");
    return [
      [
        id,
        formatMm(sum("pressN")),
        holdN < 0.05 ? "" : formatMm(holdN),
        LIMIT_WORDS[limit.by],
        `${formatNumber(Math.min(limit.share, 99) * 100, 0)}${THIN_SPACE}%`,
      ],
    ];
  });
  return [
    ...tableBlocks(columns, rows, lettering),
    gapBlock(2),
    paragraphBlock(
      "Where a rib must hold the foam down it would lift off: weigh, strap or screw it there. Images on the left are as those on the right.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
}

/** A row for every place; what is typed already is filled in. */
function checkTable({ lie }: Design, roomMm: number, lettering: Lettering): readonly Block[] {
  const columns = [
    { title: "Rib", widthMm: 18, face: "mono" as const },
    { title: "Part", widthMm: 18, face: "mono" as const },
    { title: "x", widthMm: 20, ...FIGURE },
    { title: "y", widthMm: 20, ...FIGURE },
    { title: "Drawn", widthMm: 26, ...FIGURE },
    { title: "Measured", widthMm: 20, ...FIGURE, isWrittenIn: true as const },
    ...(lie.asBuilt ? [{ title: "Off", widthMm: 36, ...FIGURE }] : []),
  ];
  const rows = lie.checks.map(({ ribId, partId, at, drawnMm }) => {
    const known = lie.asBuilt?.places.find((place) => place.at.x === at.x && place.at.y === at.y);
    return [
      ribId,
      partId,
      formatNumber(at.x, 0),
      formatNumber(at.y, 0),
      formatMm(drawnMm),
      known ? formatMm(known.measuredMm) : "",
      ...(lie.asBuilt ? [known ? signedMm(known.offMm) : ""] : []),
    ];
  });
  return besideColumns(columns, rows, { roomMm, freshMm: roomMm, lettering });
}

function shimBlocks({ fit, shims }: AsBuilt, lettering: Lettering): readonly Block[] {
  const perMetre = (slope: number) => signedMm(slope * 1000);
  const tilt = `As a whole it stands ${signedMm(fit.liftMm)} mm at x 0, y 0, ${perMetre(fit.slopeX)} mm a metre rearward (${formatNumber(toDegrees(Math.atan(fit.slopeX)), 2)}°), ${perMetre(fit.slopeY)} mm a metre to the right.`;
  const orders = shims.map(
    ({ ribId, byMm }) => `${ribId}: ${byMm > 0 ? "raise" : "lower"} by ${formatMm(Math.abs(byMm))} mm`,
  );
  const words = orders.length === 0 ? "No rib needs a shim." : `Shim: ${orders.join("; ")}.`;
  return [
    gapBlock(3),
    headingBlock("What was measured"),
    paragraphBlock(`${tilt} ${words}`, CONTENT_WIDTH_MM, lettering),
  ];
}
