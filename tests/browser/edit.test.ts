import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { clickAt, drag, drawSection, expectParts, RECTANGLE, textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

const expectChosen = (page: Page, words: string): Promise<void> =>
  expect.poll(() => textOf(page, "several-kinds")).toBe(words);

/** The places of a fence's ends as its table shows them. */
async function endsOf(page: Page, itemId: string): Promise<readonly string[]> {
  await page.keyboard.press("Escape");
  await page.getByTestId(`choose-${itemId}`).click();
  const cells = page.locator(".chosen-panel table").first().locator("input.number");
  await cells.first().waitFor();
  return cells.evaluateAll((inputs) =>
    inputs
      .map((input) => (input instanceof HTMLInputElement ? input.value : ""))
      .filter((text) => text !== ""),
  );
}

it("several fences are boxed, repeated, turned, duplicated, mirrored, carried to a new tray, and all is undone", () =>
  asVisitor(async ({ page }) => {
    await drawSection(page, RECTANGLE);
    await page.getByTestId("tool-fence").click();
    await clickAt(page, "plan", [300, 200]);
    await clickAt(page, "plan", [700, 200]);
    await page.keyboard.press("Enter");
    await page.getByTestId("tool-select").click();
    await page.keyboard.press("Escape");

    await page.keyboard.down("Shift");
    await drag(page, "plan", [
      [250, 150],
      [750, 250],
    ]);
    await page.keyboard.up("Shift");
    await page.keyboard.press("r");
    await page.getByTestId("edit-count").fill("2");
    await page.getByTestId("edit-y").fill("40");
    await page.keyboard.press("Enter");
    await expectChosen(page, "3 fences");

    await page.keyboard.press("t");
    await page.getByTestId("edit-turn").click();
    await page.getByTestId("edit-angle").fill("90");
    await page.getByTestId("edit-about-x").fill("300");
    await page.getByTestId("edit-about-y").fill("200");
    await page.keyboard.press("Enter");
    expect(await endsOf(page, "f1")).toEqual(["300.0", "200.0", "300.0", "600.0"]);
    await page.keyboard.press("Control+z");

    await page.keyboard.press("Control+a");
    await expectChosen(page, "1 section, 3 fences, 1 profile");
    await page.keyboard.press("m");
    await page.getByTestId("edit-at").fill("0");
    expect(await textOf(page, "edit-words")).toContain("left of the centre line");
    expect(await page.getByTestId("edit-take").isDisabled()).toBe(true);
    await page.getByTestId("mirror-across").selectOption("station");
    await page.getByTestId("edit-makes").selectOption("itself");
    await page.getByTestId("edit-at").fill("600");
    await page.getByTestId("edit-at").press("Enter");
    expect(await endsOf(page, "f3")).toEqual(["900.0", "280.0", "500.0", "280.0"]);

    await page.keyboard.press("Control+a");
    await page.keyboard.press("Control+d");
    await expectChosen(page, "1 section, 3 fences, 1 profile");
    await page.keyboard.press("Control+c");
    for (let step = 0; step < 5; step++) await page.keyboard.press("Control+z");
    await expectParts(page, []);

    await page.keyboard.press("Control+v");
    await expectChosen(page, "1 section, 3 fences, 1 profile");
    await expect.poll(() => textOf(page, "truth-parts")).toContain("8");
    await page.keyboard.press("Control+z");
    await expectParts(page, []);
  }));
