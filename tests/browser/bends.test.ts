import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** How long the page may take to follow on a busy machine. */
const FOLLOWS = { timeout: 30_000, interval: 50 };

const verdicts = (page: Page): Promise<string> =>
  page
    .getByTestId("bend-table")
    .locator(".verdict")
    .allTextContents()
    .then((words) => words.join(", "));

it("a bend of the demo is slotted, made of planks, left to its figures, and all is undone", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-sheets").click();
    await page.getByText("S2R", { exact: true }).first().click();
    expect(await verdicts(page)).toBe("flat, bends cold, flat");
    const method = page.getByTestId("bend-method");

    await method.selectOption("closing slots");
    await expect.poll(() => verdicts(page), FOLLOWS).toBe("flat, relief slots, flat");
    await expect.poll(() => page.getByTestId("slots").locator("rect").count(), FOLLOWS).toBeGreaterThan(0);
    expect(await page.getByTestId("bend").textContent()).toContain("closing slot into the upper face");

    // A narrower blade closes each slot by less; the words follow.
    await page.locator(".bend-settings summary").click();
    const kerf = page.locator('[data-setting="bending.slotKerfMm"]');
    await kerf.fill("1");
    await kerf.press("Enter");
    await expect.poll(() => page.getByTestId("bend").textContent(), FOLLOWS).toContain("with a 1.0 mm blade");

    await method.selectOption("planks");
    await expect.poll(() => verdicts(page), FOLLOWS).toBe("flat, planks, flat");
    await expect.poll(() => page.locator(".strip-label").count(), FOLLOWS).toBeGreaterThan(3);

    for (let step = 0; step < 3; step++) await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => verdicts(page), FOLLOWS).toBe("flat, bends cold, flat");
    expect(await method.inputValue()).toBe("by-figures");
  }));
