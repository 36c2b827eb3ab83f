import type { Vec2 } from "../../core/foundation/index.ts";
import type { Lengths } from "../lengths/index.ts";
import { type CrossSection, depthOfCut } from "./cross-section.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

/** A number over the upper face of the cut: its middle at xPx. */
export interface NumberOver {
  readonly text: string;
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
}

/**
 * What stands under the cut at one y: how far out, and of a fence how high its lower edge is and how deep it hangs. On
 * the centre line stands what the lines are.
 */
export interface CutColumn {
  readonly yMm: number;
  readonly lines: readonly string[];
}

/** Foam and skins are seldom thicker. */
const THICKEST_MM = 12;
/** Of the letters of a caption. */
const LETTER_PX = 7.3;
/** From line to line. */
export const LINE_PX = 13;
const BETWEEN_PX = 3;

/**
 * The air side's height at both ends of each sheet and the thickness of what is chosen, over the right half. One that
 * would cover another stands a line higher; where that is taken too, it is left out.
 */
export function numbersOver(
  cut: CrossSection,
  isChosen: (itemId: string) => boolean,
  lengths: Lengths,
  transform: Transform,
  box: Box,
): readonly NumberOver[] {
  const onRight = cut.sheets.filter(({ hand }) => hand !== "left");
  const thick = onRight
    .filter(({ itemId }) => isChosen(itemId))
    .flatMap(({ air, thicknessMm }) => {
      const at = air[Math.floor(air.length / 2)];
      return at ? [{ at, text: `t ${lengths.showFine(thicknessMm)}` }] : [];
    });
  const ends = onRight.flatMap(({ air }) =>
    [air[0], air.at(-1)].flatMap((at) => (at && at[0] >= -0.1 ? [{ at, text: lengths.show(at[1]) }] : [])),
  );
  const placed: NumberOver[] = [];
  for (const number of [...ends, ...thick]) {
    const low = placeOver(number, transform, box);
    const isRepeat = placed.some((other) => other.text === low.text && isOver(low, other));
    const rows = isRepeat ? [] : [low, { ...low, topPx: low.topPx - LINE_PX }];
    const free = rows.find((one) => !placed.some((other) => isOver(one, other)));
    if (free) placed.push(free);
  }
  return placed;
}

/** Clear of the foam and the skins. */
function placeOver(
  { at, text }: { readonly at: Vec2; readonly text: string },
  transform: Transform,
  box: Box,
): NumberOver {
  const [xPx, yPx] = toPx(transform, at);
  const widthPx = text.length * LETTER_PX;
  const leftPx = Math.min(xPx - widthPx / 2, box.leftPx + box.widthPx - widthPx - 4);
  return { text, leftPx, topPx: yPx - 20 - THICKEST_MM * transform.pxPerMmUp, widthPx };
}

const isOver = (one: NumberOver, other: NumberOver): boolean =>
  one.leftPx < other.leftPx + other.widthPx + BETWEEN_PX &&
  other.leftPx < one.leftPx + one.widthPx + BETWEEN_PX &&
  Math.abs(one.topPx - other.topPx) < LINE_PX;

/**
 * What stands under the cut, from the centre line out. Fences come before the ends of sheets where there is no room for
 * both, the outermost before those farther in; `mostLines` is what there is height for.
 */
export function columnsUnder(
  cut: CrossSection,
  lengths: Lengths,
  transform: Transform,
  mostLines: number,
): readonly CutColumn[] {
  const { show } = lengths;
  const fences = cut.fences.flatMap((fence): readonly CutColumn[] => {
    if (fence.hand === "left") return [];
    const depthMm = depthOfCut(cut, fence);
    const depth = depthMm === undefined ? [] : [show(depthMm)];
    return [{ yMm: fence.yMm, lines: [show(fence.yMm), show(fence.finishedZMm), ...depth] }];
  });
  const ends = cut.sheets.flatMap(({ hand, air }): readonly CutColumn[] =>
    hand === "left"
      ? []
      : [air[0], air.at(-1)].flatMap((at) =>
          at && at[0] > 0.1 ? [{ yMm: at[0], lines: [show(at[0])] }] : [],
        ),
  );
  const outward = (columns: readonly CutColumn[]) => columns.toSorted((a, b) => b.yMm - a.yMm);
  const longest = Math.max(1, ...fences.map(({ lines }) => lines.length));
  const centre: CutColumn = { yMm: 0, lines: ["y 0", "z", "deep"].slice(0, longest) };
  const kept: CutColumn[] = [];
  for (const { yMm, lines } of [centre, ...outward(fences), ...outward(ends)]) {
    const column = { yMm, lines: lines.slice(0, Math.max(1, mostLines)) };
    const hasRoom = (other: CutColumn) =>
      Math.abs(other.yMm - yMm) * transform.pxPerMmAcross >=
      (widthOf(other) + widthOf(column)) / 2 + BETWEEN_PX;
    if (kept.every(hasRoom)) kept.push(column);
  }
  return kept.toSorted((a, b) => a.yMm - b.yMm);
}

const widthOf = ({ lines }: CutColumn): number => Math.max(...lines.map(({ length }) => length)) * LETTER_PX;
