import { formatMm, formatNumber } from "../foundation/index.ts";
import type { BendHold } from "../jig/index.ts";
import { type Block, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";

const EACH = {
  sandbags: ["sandbag", "sandbags"],
  straps: ["strap", "straps"],
  screws: ["screw with washer", "screws with washers"],
} as const;

/** What holds each cold bend of a lying sheet down on the jig, and what it gives back; nothing where nothing is bent cold. */
export function holdBlocks({ holds }: Design, lettering: Lettering): readonly Block[] {
  const held = holds.flatMap((hold) => (hold.holdDown && hold.springback ? [hold] : []));
  if (held.length === 0) return [];
  const figure = { face: "mono" as const, anchor: "end" as const };
  const columns = [
    { title: "Part", widthMm: 18, face: "mono" as const },
    { title: "Bend", widthMm: 38, ...figure },
    { title: "A rib, N", widthMm: 22, ...figure },
    { title: "Held by", widthMm: 44 },
    { title: "One skin", widthMm: 26, ...figure },
    { title: "Both", widthMm: 26, ...figure },
  ];
  return [
    headingBlock("Holding the bends down"),
    ...tableBlocks(columns, held.map(row), lettering),
    gapBlock(2),
    paragraphBlock(
      "A rib, N: what the rib that the foam lifts off most is held down with. Last columns: the share of the bend that is given back if the sheet is let go with one skin, and with both. Leave it on the jig until the second skin has cured. Pins locate, and count as nothing until one is tested.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
  ];
}

function row({ partId, fromUMm, toUMm, holdDown, springback }: BendHold): readonly string[] {
  const percent = (share: number | undefined) => `${formatNumber((share ?? 0) * 100, 1)} %`;
  const { forceN = 0, count = null, by = "sandbags", eachN = 0 } = holdDown ?? {};
  const held =
    count === null
      ? "nothing: type what one holds"
      : `${count} ${EACH[by][count === 1 ? 0 : 1]} of ${formatNumber(eachN, 0)} N`;
  return [
    partId,
    `${formatMm(fromUMm)} to ${formatMm(toUMm)}`,
    formatNumber(forceN, 1),
    held,
    percent(springback?.oneSkin),
    percent(springback?.bothSkins),
  ];
}
