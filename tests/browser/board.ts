import type { Page } from "playwright-core";
import { expect } from "vitest";

/** A place on the drawing: (x, y) in plan, (x, z) in the side view, mm. */
export type Place = readonly [number, number];
export type BoardView = "plan" | "side";

interface Transform {
  readonly originXPx: number;
  readonly originYPx: number;
  readonly pixelsPerMm: number;
  readonly pixelsPerMmUp: number;
}

/** A board that has not moved for so long is at rest. */
const RESTS_MS = 50;

/** Where a place of the drawing is on the screen, px. */
export async function onScreen(page: Page, view: BoardView, [across, up]: Place): Promise<Place> {
  const { leftPx, topPx, transform } = await restingBoard(page, view);
  return [
    leftPx + transform.originXPx + across * transform.pixelsPerMm,
    topPx + transform.originYPx - up * transform.pixelsPerMmUp,
  ];
}

/** Where the board is and how it is seen, as text; two boards that look the same give the same text. */
export async function boardNow(page: Page, view: BoardView): Promise<string> {
  const drawing = page.getByTestId("drawing");
  const [box, transform] = [
    await drawing.boundingBox(),
    await drawing.getAttribute(`data-${view}-transform`),
  ];
  return `${JSON.stringify([box?.x, box?.y])} ${transform}`;
}

/** The board once it has come to rest: a size that changes is measured a frame later. */
async function restingBoard(page: Page, view: BoardView) {
  let before = "";
  let now = await boardNow(page, view);
  while (now !== before) {
    await page.waitForTimeout(RESTS_MS);
    before = now;
    now = await boardNow(page, view);
  }
  const [corner = "", text = ""] = now.split(" ", 2);
  const [leftPx = 0, topPx = 0] = JSON.parse(corner) as readonly number[];
  return { leftPx, topPx, transform: JSON.parse(text) as Transform };
}

/** Clicks a place of the drawing as a hand does: move there, press, let go. */
export async function clickAt(page: Page, view: BoardView, place: Place): Promise<void> {
  const [x, y] = await onScreen(page, view, place);
  await page.mouse.move(x, y, { steps: 3 });
  await page.mouse.down();
  await page.mouse.up();
}

/** Drags from one place to another; `onTheWay` looks while the button is still down. */
export async function drag(
  page: Page,
  view: BoardView,
  [from, to]: readonly [Place, Place],
  onTheWay: () => Promise<void> = async () => {},
): Promise<void> {
  const [fromX, fromY] = await onScreen(page, view, from);
  const [toX, toY] = await onScreen(page, view, to);
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  await page.mouse.move(toX, toY, { steps: 12 });
  await onTheWay();
  await page.mouse.up();
}

/** Begins a tray with nothing drawn. */
export async function startNew(page: Page): Promise<void> {
  await page.getByTestId("menu").click();
  await page.getByTestId("menu-new").click();
  await expectParts(page, []);
}

/** Draws a section by clicking its corners and closing it on the first. */
export async function drawSection(page: Page, corners: readonly Place[]): Promise<void> {
  await page.getByTestId("tool-section").click();
  for (const corner of [...corners, ...corners.slice(0, 1)]) await clickAt(page, "plan", corner);
}

/** A rectangle of 600 by 300 mm right of the centre line. */
export const RECTANGLE: readonly Place[] = [
  [200, 100],
  [800, 100],
  [800, 400],
  [200, 400],
];

/** Codes of the parts on the shelf, with the size that stands under each. */
export async function partsOnShelf(page: Page): Promise<readonly string[]> {
  const words = await page.getByTestId("shelf-part").locator(".shelf-words > *").allTextContents();
  return words.flatMap((word, index) => (index % 2 === 0 ? [`${word} ${words[index + 1] ?? ""}`] : []));
}

/** Waits until the shelf shows exactly these parts. */
export const expectParts = (page: Page, parts: readonly string[]): Promise<void> =>
  expect.poll(() => partsOnShelf(page)).toEqual(parts);

/** The drawn shape of a flat part, as the shelf shows it now. */
export const shapeOf = (page: Page, partId: string): Promise<string | null> =>
  page.getByTestId(`flat-${partId}`).locator("path.outline").getAttribute("d");

/** Waits until the shelf shows another shape than this. */
export const expectShapeOtherThan = (page: Page, partId: string, shape: string | null): Promise<void> =>
  expect.poll(() => shapeOf(page, partId)).not.toBe(shape);

/** The words that a thing with this test id shows now. */
export const textOf = async (page: Page, testId: string): Promise<string> =>
  (await page.getByTestId(testId).textContent()) ?? "";
