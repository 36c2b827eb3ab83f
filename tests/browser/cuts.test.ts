import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Project } from "../../core/project/index.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

const ownCuts = async (page: Page) => {
  const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return (JSON.parse(readFileSync(await file.path(), "utf8")) as Project).cutting.ownCuts ?? [];
};

it("a cut that the stock asks for is dragged elsewhere, typed, pushed by keys, added to, and left to the stock again", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-sheets").click();
    const grip = page.getByTestId("cut-grip-u");
    await grip.waitFor();
    const before = Number(await grip.getAttribute("aria-valuenow"));
    const box = await grip.locator(".reach").boundingBox();
    if (!box) throw new Error("The cut is not on the screen.");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y, { steps: 6 });
    await page.screenshot({ path: "out/cut-dragged.png" });
    await page.mouse.up();
    const after = Number(await grip.getAttribute("aria-valuenow"));
    expect(after).toBeGreaterThan(before + 20);
    expect(await ownCuts(page)).toEqual([{ sheetId: "S1", axis: "u", atMm: after }]);
    await page.keyboard.press("Control+z");
    await expect.poll(() => grip.getAttribute("aria-valuenow")).toBe(String(before));

    const field = page.getByTestId("part-cuts").locator("input").first();
    await field.fill("400+50");
    await field.press("Enter");
    await expect.poll(() => grip.getAttribute("aria-valuetext")).toBe("u 450.0 mm, yours");
    await grip.focus();
    await page.keyboard.press("Shift+ArrowRight");
    await expect.poll(() => grip.getAttribute("aria-valuenow")).toBe("460");

    await page.getByTestId("cut-across").click();
    await expect.poll(() => page.getByTestId("cut-grip-v").count()).toBe(1);
    await page.screenshot({ path: "out/cuts.png" });
    expect(await ownCuts(page)).toHaveLength(2);
    await page.getByTestId("uncut-v").click();
    await page.getByTestId("uncut-u").click();
    await expect.poll(() => grip.getAttribute("aria-valuenow")).toBe(String(before));
    expect(await ownCuts(page)).toEqual([]);
  }));
