import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drawSection, onScreen, RECTANGLE, textOf } from "./board.ts";
import { fingersOn } from "./touch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

const PHONE = { width: 390, height: 844 };
/** A knuckle in a glove. */
const KNUCKLE_PX = 96;
const DESK = { width: 1440, height: 900 };
const TABLET = { width: 768, height: 1024 };
/** Longer than a finger must be held. */
const HELD_MS = 900;

interface Seen {
  readonly originXPx: number;
  readonly originYPx: number;
  readonly pixelsPerMm: number;
}
const seenOn = async (page: Page): Promise<Seen> =>
  JSON.parse((await page.getByTestId("drawing").getAttribute("data-plan-transform")) ?? "{}");

describe("hands at the bench", () => {
  it("pinch and hold the drawing on a tablet, read on by a knuckle on a phone, and practise a first piece", () =>
    asVisitor(async ({ page }) => {
      const parts = () => textOf(page, "truth-parts");
      const wholeTray = await parts();
      await page.setViewportSize(TABLET);
      const fingers = await fingersOn(page);
      const [x, y] = await onScreen(page, "plan", [1000, 0]);

      const before = await seenOn(page);
      await fingers.put([x - 50, y], [x + 50, y]);
      for (const out of [60, 80, 100]) await fingers.slide([x - out, y], [x + out, y]);
      await fingers.lift();
      await expect.poll(async () => (await seenOn(page)).pixelsPerMm / before.pixelsPerMm).toBeCloseTo(2, 1);

      const near = await seenOn(page);
      await fingers.put([x - 50, y], [x + 50, y]);
      for (const down of [20, 40, 60]) await fingers.slide([x - 50, y + down], [x + 50, y + down]);
      await fingers.lift();
      await expect.poll(async () => (await seenOn(page)).originYPx - near.originYPx).toBeCloseTo(60, 0);
      expect((await seenOn(page)).pixelsPerMm).toBeCloseTo(near.pixelsPerMm, 3);
      expect(await page.getByTestId("deed-undo").isDisabled()).toBe(true);
      expect(await textOf(page, "chosen-panel")).toContain("Nothing is chosen.");

      await page.getByTestId("fit").click();
      await fingers.put(await onScreen(page, "plan", [300, 100]));
      await page.waitForTimeout(HELD_MS);
      await fingers.lift();
      const menu = page.getByTestId("place-menu");
      await menu.waitFor();
      expect(await menu.getAttribute("aria-label")).toMatch(/^What can be done with Centre floor/);
      for (const item of await menu.getByRole("menuitem").all())
        expect((await item.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      await page.getByTestId("here-delete").click();
      await menu.waitFor({ state: "detached" });
      await expect.poll(() => page.getByTestId("deed-undo").isDisabled()).toBe(false);
      await expect.poll(parts).not.toBe(wholeTray);
      await page.keyboard.press("Control+z");
      await expect.poll(parts).toBe(wholeTray);

      // The right button and the key open the same menu; Escape leaves it and the drawing has the focus.
      await page.mouse.click(...(await onScreen(page, "plan", [300, 100])), { button: "right" });
      await menu.waitFor();
      const byMouse = await menu.getByRole("menuitem").allTextContents();
      await page.keyboard.press("Escape");
      await menu.waitFor({ state: "detached" });
      await page.keyboard.press("Shift+F10");
      await menu.waitFor();
      expect(await menu.getByRole("menuitem").allTextContents()).toEqual(byMouse);
      await page.keyboard.press("Escape");

      // What is chosen is told in words, by the live region and by a key.
      await expect
        .poll(() => textOf(page, "chosen-announced"))
        .toMatch(/Section S1 Centre floor: closed outline/);
      await page.keyboard.press("w");
      expect(await textOf(page, "described")).toContain("Section S1 Centre floor");
      await page.keyboard.press("Escape");

      // At the bench: one card at a time, gone on by a knuckle or a tap on either half, and nothing can be changed.
      await page.setViewportSize(PHONE);
      await page.getByTestId("deed-bench").click();
      const place = page.getByTestId("bench-place");
      await expect.poll(() => place.textContent()).toMatch(/^1 of \d+$/);
      expect(await textOf(page, "bench-awake")).toMatch(/screen (stays )?lit|screen to stay lit/);
      for (const name of ["bench-next", "bench-previous"]) {
        const box = await page.getByTestId(name).boundingBox();
        expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(KNUCKLE_PX);
      }
      const sheet = await page.getByTestId("bench-sheet").boundingBox();
      const tap = async (share: number) => {
        await fingers.put([(sheet?.x ?? 0) + (sheet?.width ?? 0) * share, (sheet?.y ?? 0) + 200]);
        await fingers.lift();
      };
      await tap(0.9);
      await expect.poll(() => place.textContent()).toMatch(/^2 of/);
      await tap(0.1);
      await expect.poll(() => place.textContent()).toMatch(/^1 of/);
      await page.getByTestId("bench-glue").click();
      await expect.poll(() => textOf(page, "bench-sheet")).toContain("Take care.");
      for (const key of ["Delete", "ArrowRight", "Control+Shift+z", "x", "Enter"])
        await page.keyboard.press(key);
      await page.getByTestId("bench-leave").click();
      expect(await page.getByTestId("truth-line").getAttribute("data-computing")).toBe("false");
      expect(await parts()).toBe(wholeTray);

      // The guided practice: it tells the next thing, goes on by itself, and blocks nothing.
      await page.setViewportSize(DESK);
      await page.getByTestId("menu").click();
      await page.getByTestId("menu-guide").click();
      const told = async (name: string) =>
        expect.poll(() => page.getByTestId("guide-words").getAttribute("data-step")).toBe(name);
      await told("take");
      await page.getByTestId("tool-section").click();
      await told("draw");
      await drawSection(page, RECTANGLE);
      await told("choose");
      await page.getByTestId("drawing").focus();
      await page.keyboard.press("n");
      await told("type");
      const across = page.getByTestId("chosen-panel").locator("[data-testid$='-x']").nth(1);
      await across.fill("650");
      await across.press("Enter");
      await told("round");
      const radius = page.getByTestId("chosen-panel").locator("[data-testid$='-radius']").first();
      await radius.fill("40");
      await radius.press("Enter");
      await told("flat");
      await page.getByTestId("shelf-part").first().click();
      await told("print");
      await page.getByTestId("stage-print").click();
      await told("finished");
      await page.getByTestId("guide-leave").click();
      await page.getByTestId("guide").waitFor({ state: "detached" });
    }));
});
