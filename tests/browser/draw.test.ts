import { describe, expect, it } from "vitest";
import {
  boardNow,
  clickAt,
  drag,
  drawSection,
  expectParts,
  expectShapeOtherThan,
  RECTANGLE,
  shapeOf,
  textOf,
} from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

const DRAWN = ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"];
const DRAGGED = ["S1R 700.0 × 300.0 mm", "S1L 700.0 × 300.0 mm"];

describe("drawing by hand", () => {
  it("makes a section from nothing: its flat part and the mirror image appear on the shelf", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      await expect.poll(() => textOf(page, "truth-parts")).toContain("2");
    }));

  it("keeps the paper still under the hand while a section is drawn", () =>
    asVisitor(async ({ page }) => {
      const before = await boardNow(page, "plan");
      await page.getByTestId("tool-section").click();
      for (const corner of RECTANGLE) {
        await clickAt(page, "plan", corner);
        expect(await boardNow(page, "plan")).toBe(before);
      }
    }));

  it("reshapes the flat part while a node is dragged, and takes the whole drag back in one step", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      const before = await shapeOf(page, "S1R");
      const corner = [800, 400] as const;
      await drag(page, "plan", [corner, [900, 400]], () => expectShapeOtherThan(page, "S1R", before));
      await expectParts(page, DRAGGED);

      await page.keyboard.press("Control+z");
      await expectParts(page, DRAWN);
      await page.keyboard.press("Control+Shift+z");
      await expectParts(page, DRAGGED);
      await page.keyboard.press("Control+z");
      await page.keyboard.press("Control+z");
      await expectParts(page, []);
    }));

  it("leaves a drag off with Escape, and nothing has happened", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      await drag(
        page,
        "plan",
        [
          [800, 400],
          [900, 400],
        ],
        () => page.keyboard.press("Escape"),
      );
      await expectParts(page, DRAWN);
    }));

  it("adds a fence under a section, right and left", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      await page.getByTestId("tool-fence").click();
      await clickAt(page, "plan", [300, 250]);
      await clickAt(page, "plan", [700, 250]);
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByTestId("shelf-part").count()).toBe(4);
      const codes = await page.getByTestId("shelf-part").locator(".code").allTextContents();
      expect(codes).toEqual(["S1R", "S1L", "F1R", "F1L"]);
    }));

  it("names a crossing outline, keeps the good section, and a click on the problem chooses the bad one", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      await drawSection(page, [
        [200, 450],
        [800, 600],
        [800, 450],
        [200, 600],
      ]);
      await expect.poll(() => textOf(page, "problems")).toMatch(/1 thing/);
      await expectParts(page, DRAWN);
      await page.getByTestId("problems").click();
      expect(await textOf(page, "problem")).toMatch(/Section 2.*cross/s);
      await page.mouse.move(0, 0);
      await page.getByTestId("problem").click();
      await expect.poll(() => textOf(page, "chosen")).toContain("Section 2");
    }));
});
