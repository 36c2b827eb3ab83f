import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

const cells = (page: Page, key: string) => page.getByTestId(`buy-${key}`).getByRole("cell").allTextContents();
const entry = (page: Page, key: string, nth: number) =>
  page.getByTestId(`buy-${key}`).getByRole("textbox").nth(nth);

describe("the shopping list", () => {
  it("counts packs, takes what is there and prices, leads from a bad figure to its field, and is undone", () =>
    asVisitor(async ({ page }) => {
      await page.getByTestId("stage-buy").click();
      await page.getByTestId("buy-paper A4").waitFor();
      expect((await cells(page, "pins")).at(4)).toBe("1");
      const costBefore = await textOf(page, "to-buy-cost");

      // More than is needed is in store: none is bought; a price of what is bought adds up.
      await entry(page, "pins", 0).fill("400");
      await entry(page, "pins", 0).press("Enter");
      await expect.poll(async () => (await cells(page, "pins")).at(4)).toBe("0");
      await entry(page, "brushes", 2).fill("12.5");
      await entry(page, "brushes", 2).press("Enter");
      await expect.poll(() => textOf(page, "to-buy-cost")).not.toBe(costBefore);
      expect((await cells(page, "brushes")).at(-1)).toBe("12.50");

      // A sheet keeps its price with its stock.
      await entry(page, "stock stock-1", 2).fill("20");
      await entry(page, "stock stock-1", 2).press("Enter");
      await expect.poll(async () => Number((await cells(page, "stock stock-1")).at(-1)) % 20).toBe(0);
      await page.getByTestId("stage-stock").click();
      await expect
        .poll(() => page.locator("[data-setting='stock.stock-1.priceEach']").inputValue())
        .toBe("20");

      // A pack of nothing is told at the foot, and the rest of its line still counts.
      await page.getByTestId("stage-buy").click();
      await entry(page, "pins", 1).fill("0");
      await entry(page, "pins", 1).press("Enter");
      await page.locator("button[data-testid='problems']").click();
      const told = page.getByTestId("problem").filter({ hasText: "shopping list, pins" });
      await told.click();
      await expect
        .poll(() => page.evaluate(() => document.activeElement?.getAttribute("data-setting")))
        .toBe("shopping.pins");
      expect((await cells(page, "pins")).at(4)).toBe("0");

      for (let i = 0; i < 4; i++) await page.keyboard.press("Control+z");
      await expect.poll(async () => (await cells(page, "pins")).at(4)).toBe("1");
    }));
});
