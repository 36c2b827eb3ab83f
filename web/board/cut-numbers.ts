import type { Vec2 } from "../../core/foundation/index.ts";
import type { Lengths } from "../lengths/index.ts";
import { type CrossSection, depthOfCut } from "./cross-section.ts";
import { type Box, type Transform, toPx } from "./viewport.ts";

/** A number of the cross-section before it has its place: what it belongs to, y and z in mm. */
export interface CutNumber {
  readonly at: Vec2;
  readonly text: string;
  /** A sheet's number stands over its edge; a fence's beside its foot, outward on the outermost. */
  readonly stands: "over" | "left" | "right";
}

export interface PlacedNumber {
  readonly text: string;
  readonly align: "left" | "center" | "right";
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
}

/**
 * The thickness of what is chosen, the air side's height at both ends of each sheet, and the fences' lower edges with
 * their depths, on the right half; the outermost fence first.
 */
export function numbersOfCut(
  cut: CrossSection,
  isChosen: (itemId: string) => boolean,
  lengths: Lengths,
): readonly CutNumber[] {
  const onRight = cut.sheets.filter(({ hand }) => hand !== "left");
  const thick = onRight
    .filter(({ itemId }) => isChosen(itemId))
    .flatMap(({ air, thicknessMm }): readonly CutNumber[] => {
      const at = air[Math.floor(air.length / 2)];
      return at ? [{ at, text: `t ${lengths.showFine(thicknessMm)}`, stands: "over" }] : [];
    });
  const ends = onRight.flatMap(({ air }) =>
    [air[0], air.at(-1)].flatMap((at): readonly CutNumber[] =>
      at && at[0] >= -0.1 ? [{ at, text: lengths.show(at[1]), stands: "over" }] : [],
    ),
  );
  return [...thick, ...withoutRepeats(ends), ...numbersOfFences(cut, lengths)];
}

function numbersOfFences(cut: CrossSection, { show }: Lengths): readonly CutNumber[] {
  const fences = cut.fences.filter(({ hand }) => hand !== "left").toSorted((a, b) => b.yMm - a.yMm);
  return fences.map((fence, index): CutNumber => {
    const depthMm = depthOfCut(cut, fence);
    return {
      at: [fence.yMm, fence.finishedZMm],
      text: `${show(fence.finishedZMm)}${depthMm === undefined ? "" : `\n${show(depthMm)} deep`}`,
      stands: index === 0 ? "right" : "left",
    };
  });
}

/** Where two sheets meet at one height the number stands once. */
const withoutRepeats = (numbers: readonly CutNumber[]): readonly CutNumber[] =>
  numbers.filter(
    (one, index) =>
      !numbers
        .slice(0, index)
        .some((other) => other.text === one.text && Math.abs(other.at[0] - one.at[0]) < 1),
  );

/** Foam and skins are seldom thicker. */
const THICKEST_MM = 12;
/** Of the letters of a caption. */
const LETTER_PX = 7.3;
const LINE_PX = 12;
/** Between a fence's foot and its number, clear of the handle there. */
const ASIDE_PX = 8;
const BETWEEN_PX = 3;

/**
 * Gives each number a place in which it covers no other and no fence's foot; in order, and one for which there is none
 * is left out, first its second line. It stands in the panel and under the handle all the same.
 */
export function placeCutNumbers(
  numbers: readonly CutNumber[],
  transform: Transform,
  box: Box,
): readonly PlacedNumber[] {
  const feet = numbers.flatMap(({ at, stands }) => (stands === "over" ? [] : [footOf(toPx(transform, at))]));
  const placed: PlacedNumber[] = [];
  for (const number of numbers) {
    const texts = [...new Set([number.text, firstLine(number.text)])];
    const place = texts
      .flatMap((text) => placesOf({ ...number, text }, transform, box))
      .find(
        (one) =>
          isWithin(one, box) && ![...placed.map(boxOf), ...feet].some((other) => isOver(boxOf(one), other)),
      );
    if (place) placed.push(place);
  }
  return placed;
}

const firstLine = (text: string): string => text.split("\n")[0] ?? text;

/** The places that a number may take, the best first. */
function placesOf({ at, text, stands }: CutNumber, transform: Transform, box: Box): readonly PlacedNumber[] {
  const [xPx, yPx] = toPx(transform, at);
  const widthPx = Math.max(...text.split("\n").map((line) => line.length)) * LETTER_PX;
  const over = yPx - 20 - THICKEST_MM * transform.pxPerMmUp;
  const leftPx = Math.min(xPx - widthPx / 2, box.leftPx + box.widthPx - widthPx);
  const middle = { text, align: "center", leftPx, widthPx } as const;
  // Numbers of the air side stand over the upper face, so that they do not lie on the foam.
  if (stands === "over") return [{ ...middle, topPx: over }];
  const right = { text, align: "left", leftPx: xPx + ASIDE_PX, topPx: yPx - 13, widthPx } as const;
  const left = { ...right, align: "right", leftPx: xPx - ASIDE_PX - widthPx } as const;
  const under = { ...middle, topPx: yPx + ASIDE_PX + 2 };
  return stands === "right" ? [right, left, under] : [left, right, under];
}

interface Covered {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxOf = ({ text, leftPx, topPx, widthPx }: PlacedNumber): Covered => ({
  left: leftPx,
  right: leftPx + widthPx,
  top: topPx,
  bottom: topPx + text.split("\n").length * LINE_PX,
});

const footOf = ([x, y]: Vec2): Covered => ({ left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 });

const isOver = (one: Covered, other: Covered): boolean =>
  one.left < other.right + BETWEEN_PX &&
  other.left < one.right + BETWEEN_PX &&
  one.top < other.bottom &&
  other.top < one.bottom;

const isWithin = ({ leftPx, widthPx, topPx }: PlacedNumber, box: Box): boolean =>
  leftPx >= box.leftPx &&
  leftPx + widthPx <= box.leftPx + box.widthPx &&
  topPx >= box.topPx &&
  topPx < box.topPx + box.heightPx - LINE_PX;
