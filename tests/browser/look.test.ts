import { createHash } from "node:crypto";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { textOf } from "./board.ts";
import { visit } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visit, "in space");

/** Opens the look and waits until the parts stand in it. */
async function openLook(page: Page): Promise<void> {
  await page.getByTestId("show-3d").click();
  await page.getByTestId("look-picture").waitFor();
  await page.locator(".look-label.part").first().waitFor();
}

/** The picture as it is now by its digest, once two looks at it agree. */
async function pictureOf(page: Page): Promise<string> {
  const take = async () =>
    createHash("sha256")
      .update(await page.getByTestId("look-picture").screenshot())
      .digest("hex");
  let before = await take();
  for (let i = 0; i < 20; i++) {
    const now = await take();
    if (now === before) return now;
    before = now;
  }
  throw new Error("The picture never stands still.");
}

const cameraOf = (page: Page) => page.getByTestId("look-picture").getAttribute("data-camera");

describe("the tray in 3D", () => {
  it("is fetched when it is first opened, and not before", () =>
    asVisitor(async ({ page }) => {
      const scripts = () =>
        page.evaluate(
          () => performance.getEntriesByType("resource").filter(({ name }) => /LookView/.test(name)).length,
        );
      // The offline worker may keep the file ahead of time; the page itself has not asked for it.
      const linked = await page.evaluate(() => document.querySelectorAll('link[href*="LookView"]').length);
      expect(linked).toBe(0);
      await openLook(page);
      expect(await scripts()).toBeGreaterThan(0);
      const label = await page.getByTestId("look-picture").getAttribute("aria-label");
      expect(label).toMatch(/The tray in 3D, \d+ parts/);
    }));

  it("turns by key and by mouse, goes nearer by key and wheel, and home again", () =>
    asVisitor(async ({ page }) => {
      await openLook(page);
      const picture = page.getByTestId("look-picture");
      await picture.focus();
      await page.keyboard.press("0");
      const home = await pictureOf(page);
      const homeCamera = await cameraOf(page);
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("ArrowUp");
      const turned = await pictureOf(page);
      expect(turned).not.toBe(home);
      await page.keyboard.press("+");
      const nearer = await pictureOf(page);
      expect(nearer).not.toBe(turned);
      await page.keyboard.press("0");
      await expect.poll(() => cameraOf(page)).toBe(homeCamera);
      expect(await pictureOf(page)).toBe(home);

      const box = await picture.boundingBox();
      if (!box) throw new Error("The picture has no place.");
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 80, y + 30, { steps: 4 });
      await page.mouse.up();
      expect(await cameraOf(page)).not.toBe(homeCamera);
      const pulled = await pictureOf(page);
      expect(pulled).not.toBe(home);
      await page.mouse.wheel(0, -300);
      await expect.poll(() => pictureOf(page)).not.toBe(pulled);
    }));

  it("draws the parts apart and lays them flat by its sliders, also from the keyboard", () =>
    asVisitor(async ({ page }) => {
      await openLook(page);
      const folded = await pictureOf(page);
      await page.getByTestId("look-bend").focus();
      await page.keyboard.press("Home");
      const flat = await pictureOf(page);
      expect(flat).not.toBe(folded);
      await page.keyboard.press("End");
      expect(await pictureOf(page)).toBe(folded);
      await page.getByTestId("look-apart").fill("80");
      expect(await pictureOf(page)).not.toBe(folded);
    }));

  it("chooses the part that is clicked and says its code; what is drawn stays as it is", () =>
    asVisitor(async ({ page }) => {
      await openLook(page);
      const parts = await textOf(page, "truth-parts");
      await page.getByTestId("look-from-above").click();
      const picture = page.getByTestId("look-picture");
      const box = await picture.boundingBox();
      if (!box) throw new Error("The picture has no place.");
      const before = await pictureOf(page);
      await picture.click({ position: { x: box.width / 2 - box.width / 8, y: box.height / 2 } });
      await expect.poll(() => picture.getAttribute("aria-label")).toContain("S1 chosen");
      expect(await pictureOf(page)).not.toBe(before);
      await picture.focus();
      for (const key of ["ArrowLeft", "ArrowUp", "-", "0"]) await page.keyboard.press(key);
      expect(await textOf(page, "truth-parts")).toBe(parts);
      expect(await page.getByTestId("deed-undo").isDisabled()).toBe(true);
    }));

  it("stands beside the list of parts, too, and in the dark", () =>
    asVisitor(async ({ page }) => {
      await openLook(page);
      await page.getByTestId("stage-sheets").click();
      await page.locator(".look-label.part").first().waitFor();
      const light = await pictureOf(page);
      await page.emulateMedia({ colorScheme: "dark" });
      await expect.poll(() => pictureOf(page)).not.toBe(light);
      await page.locator('[data-testid="part-row"][data-part="S2R"]').click();
      await expect
        .poll(() => page.getByTestId("look-picture").getAttribute("aria-label"))
        .toContain("S2R chosen");
      await page.getByTestId("show-flat").click();
      await page.getByTestId("part-view").waitFor();
    }));
});

describe("a browser without WebGL", () => {
  it("says so in one sentence, and keeps the rest", () =>
    asVisitor(async ({ context, page }) => {
      await context.addInitScript(() => {
        const getContext = HTMLCanvasElement.prototype.getContext;
        Object.defineProperty(HTMLCanvasElement.prototype, "getContext", {
          value(this: HTMLCanvasElement, kind: string, ...rest: readonly unknown[]) {
            return kind.startsWith("webgl") ? null : Reflect.apply(getContext, this, [kind, ...rest]);
          },
        });
      });
      await page.reload();
      await page.getByTestId("truth-parts").waitFor();
      await page.getByTestId("show-3d").click();
      await page.getByTestId("look-missing").waitFor();
      await page.getByTestId("show-flat").click();
      await expect.poll(() => page.getByTestId("shelf-part").count()).toBeGreaterThan(0);
    }));
});
