import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { drag, drawSection, expectParts, RECTANGLE, textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

const DRAWN = ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"];
const DRAGGED = ["S1R 700.0 × 300.0 mm", "S1L 700.0 × 300.0 mm"];

const steps = (page: Page) => page.getByTestId("step").locator(".step-name").allTextContents();
const presentStep = (page: Page) => page.locator('.step[data-when="now"] .step-name').textContent();

it("steps are listed and jumped to; a snapshot is kept, compared by picture and numbers, and gone back to", () =>
  asVisitor(async ({ page }) => {
    await drawSection(page, RECTANGLE);
    await expectParts(page, DRAWN);

    await page.keyboard.press("Control+Shift+S");
    await page.getByTestId("snapshot-name").fill("Short floor");
    await page.getByTestId("snapshot-name").press("Enter");
    expect(await textOf(page, "snapshot")).toContain("Short floor");

    await drag(page, "plan", [
      [800, 400],
      [900, 400],
    ]);
    await expectParts(page, DRAGGED);
    expect(await steps(page)).toEqual(["As opened", "Add Section 1", "Move node 3 of Section 1"]);
    expect(await page.getByTestId("deed-undo").getAttribute("title")).toContain("Move node 3 of Section 1");

    await page.getByTestId("step").nth(1).click();
    await expectParts(page, DRAWN);
    expect(await presentStep(page)).toBe("Add Section 1");
    expect(await page.getByTestId("deed-redo").getAttribute("title")).toContain("Move node 3 of Section 1");
    await page.getByTestId("steps").press("End");
    await expectParts(page, DRAGGED);

    await page.getByTestId("snapshot-compare").click();
    await expect
      .poll(() => textOf(page, "compared-nodes"))
      .toContain("Node 3 of Section 1x 800.0, y 400.0x 900.0, y 400.0x +100.0");
    expect(await page.getByTestId("compared-plan").getAttribute("aria-label")).toContain("S1 changed");
    await page.getByTestId("compared-parts").waitFor();
    expect(await textOf(page, "compared-parts")).toMatch(
      /S1R Section 1, right: developed length600\.0\Wmm700\.0\Wmm\+100\.0\Wmm/,
    );
    await page.keyboard.press("Escape");

    await page.getByTestId("snapshot-delete").click();
    expect(await page.getByTestId("snapshot").count()).toBe(0);
    await page.getByTestId("put-back").click();
    await page.reload();
    await expectParts(page, DRAGGED);
    await page.keyboard.press("g");
    await page.getByTestId("snapshot-go-back").click();
    await expectParts(page, DRAWN);
    expect(await presentStep(page)).toBe("Go back to Short floor");
    await page.keyboard.press("Control+z");
    await expectParts(page, DRAGGED);
  }));
