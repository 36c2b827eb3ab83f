import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { expectParts, partsOnShelf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** More presses of Tab than the page has things to go to. */
const MOST_TABS = 150;

/** Presses Tab until the thing with this test id has the focus. */
async function tabTo(page: Page, testId: string): Promise<void> {
  const isThere = () =>
    page.evaluate((id) => document.activeElement?.getAttribute("data-testid") === id, testId);
  for (let presses = 0; presses < MOST_TABS; presses += 1) {
    if (await isThere()) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not lead to ${testId}.`);
}

/** Presses keys with nothing between them but what the page does at once; comes back when that has led to all that follows. */
const pressInOneBreath = (page: Page, keys: readonly string[]): Promise<void> =>
  page.evaluate(async (names) => {
    for (const key of names) {
      const shiftKey = key === "?";
      document.activeElement?.dispatchEvent(
        new KeyboardEvent("keydown", { key, shiftKey, bubbles: true, cancelable: true }),
      );
      await Promise.resolve();
    }
    await new Promise((rested) => setTimeout(rested, 100));
  }, keys);

async function typeCorner(page: Page, x: string, y: string): Promise<void> {
  await tabTo(page, "typed-first");
  await page.keyboard.type(x);
  await page.keyboard.press("Tab");
  await page.keyboard.type(y);
  await page.keyboard.press("Enter");
}

describe("the keyboard alone", () => {
  it("starts a tray, draws a section with typed numbers, moves a node, takes it back, and adds a fence", () =>
    asVisitor(async ({ page }) => {
      await tabTo(page, "menu");
      await page.keyboard.press("Enter");
      await tabTo(page, "menu-new");
      await page.keyboard.press("Enter");
      await expectParts(page, []);

      await tabTo(page, "tool-section");
      await page.keyboard.press("Enter");
      await typeCorner(page, "200", "100");
      await typeCorner(page, "1000-200", "100");
      await typeCorner(page, "800", "400");
      await typeCorner(page, "200", "400");
      await tabTo(page, "finish");
      await page.keyboard.press("Enter");
      await expectParts(page, ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"]);

      await tabTo(page, "drawing");
      await page.keyboard.press("n");
      await page.keyboard.press("ArrowLeft");
      await expect.poll(() => partsOnShelf(page)).not.toContain("S1R 600.0 × 300.0 mm");
      await page.keyboard.press("Control+z");
      await expectParts(page, ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"]);

      await tabTo(page, "tool-fence");
      await page.keyboard.press("Enter");
      await typeCorner(page, "300", "250");
      await typeCorner(page, "700", "250");
      await tabTo(page, "finish");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByTestId("shelf-part").count()).toBe(4);
    }));

  it("goes through the stages, moves the hairline, shows the list of keys, saves and prints", () =>
    asVisitor(async ({ page }) => {
      await tabTo(page, "hairline");
      const before = await page.getByTestId("hairline").getAttribute("aria-valuenow");
      await page.keyboard.press("ArrowRight");
      expect(await page.getByTestId("hairline").getAttribute("aria-valuenow")).not.toBe(before);

      await page.keyboard.press("Shift+?");
      await page.getByTestId("key-list").waitFor();
      await page.keyboard.press("Escape");
      await page.getByTestId("key-list").waitFor({ state: "detached" });
      await pressInOneBreath(page, ["?", "Escape"]);
      expect(await page.getByTestId("key-list").count()).toBe(0);
      await pressInOneBreath(page, ["?", "]"]);
      await page.getByTestId("key-list").waitFor();
      await page.keyboard.press("Escape");
      await page.getByTestId("key-list").waitFor({ state: "detached" });
      expect(await page.getByTestId("stage-view-draw").count()).toBe(1);

      const [saved] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
      expect(saved.suggestedFilename()).toMatch(/\.json$/);

      for (const stage of ["sheets", "stock", "jig", "glue", "skin", "print"]) {
        await tabTo(page, `stage-${stage}`);
        await page.keyboard.press("Enter");
        await page.getByTestId(`stage-view-${stage}`).waitFor();
      }
      await tabTo(page, "make-templates");
      const [printed] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Enter")]);
      expect(printed.suggestedFilename()).toMatch(/templates\.pdf$/);
    }));
});
