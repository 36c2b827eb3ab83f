import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

it("a pot is told in grams once the supplier's ratio is typed, and no session is planned in the cold", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-skin").click();
    const face = page.getByTestId("skin-lower-face");
    await face.waitFor();
    await expect.poll(() => face.getByTestId("pots").first().textContent()).toContain("?");
    const type = async (setting: string, value: string) => {
      await page.locator(`[data-setting="laminate.${setting}"]`).fill(value);
      await page.keyboard.press("Enter");
    };
    await type("hardenerPer100", "30");
    await expect.poll(() => face.getByTestId("pots").first().textContent()).not.toContain("?");
    const cells = await face.getByTestId("pots").first().locator("tbody td").allTextContents();
    const [, mixed, resin, hardener] = cells.map((words) => Number.parseFloat(words));
    expect((hardener ?? 0) / (resin ?? 1)).toBeCloseTo(0.3, 2);
    expect((hardener ?? 0) + (resin ?? 0)).toBeCloseTo(mixed ?? 0, 0);
    await type("shopCelsius", "9");
    await expect.poll(() => face.textContent()).toContain("No session is planned");
    await expect.poll(() => page.getByTestId("truth-line").textContent()).toContain("2 things");
  }));
