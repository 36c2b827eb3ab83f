import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { clickAt, drawSection, RECTANGLE, startNew, textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

/** The same lengths as they are typed by a builder who thinks in either. */
const TYPED = {
  mm: {
    rear: "609.6",
    corner: "30.1625+254",
    radius: "38.1",
    row: "19.05",
    inboard: "180.975",
    height: "2*25.4",
    drawn: "1422.4",
  },
  inch: { rear: "24", corner: "1 3/16 + 10", radius: "1 1/2", row: "3/4", inboard: "7 1/8" },
} as const;

/** Types a number into a field and waits until it is taken. */
async function type(page: Page, testId: string, text: string): Promise<void> {
  const field = page.getByTestId(testId);
  await field.fill(text);
  await field.press("Enter");
  await expect.poll(() => field.getAttribute("data-draft")).toBeNull();
}

async function choose(page: Page, units: "Millimetres" | "Inches"): Promise<void> {
  await page.getByTestId("menu").click();
  await page.getByTestId("units").getByText(units).click();
  await page.keyboard.press("Escape");
}

/**
 * Draws a section and a row of fences; gives the file, its own name left out. What a click sets down lies on the grid of the units, so both draw on one;
 * every number after that is typed.
 */
async function journey(page: Page, units: keyof typeof TYPED): Promise<string> {
  const typed = TYPED[units];
  await choose(page, "Millimetres");
  await startNew(page);
  await drawSection(page, RECTANGLE);
  await page.getByTestId("tool-fence").click();
  await clickAt(page, "plan", [300, 200]);
  await clickAt(page, "plan", [500, 200]);
  await page.keyboard.press("Enter");
  await page.getByTestId("tool-select").click();
  if (units === "inch") await choose(page, "Inches");
  await type(page, "node-n1-y", typed.inboard);
  await page.getByTestId("drawing").focus();
  for (const _ of [1, 2]) await page.keyboard.press("Escape");
  await page.getByTestId("choose-f1").first().click();
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("r");
  await page.getByTestId("edit-count").fill("2");
  await page.getByTestId("edit-y").fill(typed.row);
  await page.getByTestId("edit-y").press("Enter");
  await expect.poll(() => textOf(page, "several-kinds")).toBe("3 fences");
  await page.getByTestId("drawing").focus();
  await page.keyboard.press("Escape");
  await page.getByTestId("choose-s1").first().click();
  await type(page, "node-n2-x", typed.rear);
  await type(page, "node-n3-y", typed.corner);
  await type(page, "node-n3-radius", typed.radius);
  const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return readFileSync(await file.path(), "utf8").replace(/"id": "[^"]{12,}"/, '"id": ""');
}

it("the same journey in millimetres and in inches gives the same file", () =>
  asVisitor(async ({ page }) => {
    const inMm = await journey(page, "mm");
    const inInches = await journey(page, "inch");
    expect(JSON.parse(inMm).items).toHaveLength(4);
    expect(inInches).toBe(inMm);
  }));
