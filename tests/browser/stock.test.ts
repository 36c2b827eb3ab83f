import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { designTray } from "../../core/design.ts";
import { readExample } from "../read-example.ts";
import { textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();
const GROUP = "xps-10";

/** Lays the demo's foam out, stops at the first layout that is found, and accepts it. */
async function acceptFirstLayout(page: Page): Promise<void> {
  await page.getByTestId("stage-stock").click();
  await page.getByTestId(`deed-lay-out-${GROUP}`).click();
  await expect
    .poll(() => textOf(page, `layout-words-${GROUP}`), { timeout: 60_000 })
    .toContain("not yet accepted");
  await page.getByTestId("deed-stop-laying").click();
  await page.getByTestId("deed-accept-layout").click();
  await expect
    .poll(() => page.getByTestId(`layout-${GROUP}`).getAttribute("data-standing"), { timeout: 60_000 })
    .toBe("accepted");
}

const strips = designTray(readExample("hill-climb-floor")).strips.map(({ id }) => id);

describe("laying strips on stock", () => {
  it("shows the best layout so far, takes it when it is accepted, and has every strip on it once", () =>
    asVisitor(async ({ page }) => {
      await acceptFirstLayout(page);
      const laid = await page.getByTestId(`layout-${GROUP}`).locator(".laid-piece").allTextContents();
      expect(new Set(laid).size).toBe(laid.length);
      expect(laid.toSorted()).toEqual(strips.toSorted());
    }));

  it("marks two pieces red that are moved over each other, and names them until they are apart", () =>
    asVisitor(async ({ page }) => {
      await acceptFirstLayout(page);
      const group = page.getByTestId(`layout-${GROUP}`);
      const pieces = group.locator('[data-testid^="laid-sheet-"]').nth(1).locator(".laid-piece");
      const [first, second] = [pieces.nth(0), pieces.nth(1)];
      await first.scrollIntoViewIfNeeded();
      const [from, to] = [await first.boundingBox(), await second.boundingBox()];
      if (!from || !to) throw new Error("Two pieces are drawn.");
      await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
      await page.mouse.down();
      await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 4 });
      await page.mouse.up();
      const wrong = group.locator('.laid-piece[data-wrong="true"]');
      await expect.poll(() => wrong.count(), { timeout: 30_000 }).toBeGreaterThanOrEqual(2);
      await page.keyboard.press("Control+z");
      await expect.poll(() => wrong.count(), { timeout: 30_000 }).toBe(0);
    }));

  it("locks a piece in its place, and says that the layout is out of date once the blade takes more", () =>
    asVisitor(async ({ page }) => {
      await acceptFirstLayout(page);
      const piece = page.getByTestId(`layout-${GROUP}`).locator(".laid-piece").first();
      await piece.focus();
      await page.getByTestId("lock-piece").click();
      await expect.poll(() => piece.getAttribute("data-locked"), { timeout: 30_000 }).toBe("true");
      await page.locator('[data-setting="laying.clearanceMm"]').fill("8");
      await page.keyboard.press("Enter");
      await expect
        .poll(() => page.getByTestId(`layout-${GROUP}`).getAttribute("data-standing"), { timeout: 30_000 })
        .toBe("out of date");
    }));
});
