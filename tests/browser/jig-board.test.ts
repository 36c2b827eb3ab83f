import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** How long the page may take to follow on a busy machine. */
const FOLLOWS = { timeout: 60_000, interval: 100 };

it("a height of the baseboard in the tray, and a measured one out of range, are named and lead to their fields", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-jig").click();
    const level = page.locator('[data-setting="jig.making.baseZMm"]');
    await expect.poll(() => level.count(), FOLLOWS).toBe(1);
    await level.fill("0");
    await level.press("Enter");
    const words = page.getByText("The baseboard at z 0.0 lies in the tray");
    await expect.poll(() => page.getByTestId("problems").textContent(), FOLLOWS).toContain("1");
    await page.getByTestId("problems").click();
    await expect.poll(() => words.count(), FOLLOWS).toBeGreaterThan(0);
    await words.first().click();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute("data-setting")), FOLLOWS)
      .toBe("jig.making.baseZMm");
    await page.getByRole("button", { name: "Let the lowest rib set it" }).click();
    await expect.poll(() => words.count(), FOLLOWS).toBe(0);

    await page.getByTestId("board-heights").locator("summary").click();
    const measured = page.locator('[data-setting="jig.making.boardHeights.4"]');
    await measured.fill("80");
    await measured.press("Enter");
    await page.getByTestId("board-heights").locator("summary").click();
    const tooHigh = page.getByText("Height of point 5");
    await expect.poll(() => page.getByTestId("problems").textContent(), FOLLOWS).toContain("1");
    await page.getByTestId("problems").click();
    await expect.poll(() => tooHigh.count(), FOLLOWS).toBeGreaterThan(0);
    await tooHigh.first().click();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute("data-setting")), FOLLOWS)
      .toBe("jig.making.boardHeights.4");
  }));
