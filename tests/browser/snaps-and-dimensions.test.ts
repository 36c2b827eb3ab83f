import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { clickAt, expectParts, onScreen, type Place } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

/** Types the length and the direction of the segment in hand. */
async function typeSegment(page: Page, length: string, direction: string): Promise<void> {
  await page.keyboard.type(length);
  await page.keyboard.press("Tab");
  await page.keyboard.type(direction);
  await page.keyboard.press("Enter");
}

/** Moves the pointer to a place in plan and says what it snaps to there. */
async function snapAt(page: Page, place: Place): Promise<string | null> {
  const [x, y] = await onScreen(page, "plan", place);
  await page.mouse.move(x - 9, y - 9);
  await page.mouse.move(x, y, { steps: 3 });
  await page.waitForTimeout(60);
  return page.getByTestId("drawing").getAttribute("data-snap");
}

/** Pulls a grip by pixels; `onTheWay` looks while it is held. */
async function pull(
  page: Page,
  grip: Locator,
  [byX, byY]: Place,
  onTheWay: () => Promise<void> = async () => {},
): Promise<void> {
  const box = await grip.boundingBox();
  if (!box) throw new Error("The grip is not there.");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + byX, y + byY, { steps: 6 });
  await onTheWay();
  await page.mouse.up();
}

const depthNow = async (tip: Locator): Promise<number> => Number(await tip.getAttribute("aria-valuenow"));

describe("numbers and snaps on the board", () => {
  it("draws by typed segments, types over a dimension, shows a comb, says what it snaps to, and pulls a fence deeper", () =>
    asVisitor(async ({ page }) => {
      await page.getByTestId("tool-section").click();
      await clickAt(page, "plan", [200, 100]);
      await typeSegment(page, "600", "0");
      await typeSegment(page, "250+50", "90");
      await typeSegment(page, "600", "180");
      await page.getByTestId("finish").click();
      await expectParts(page, ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"]);

      // A dimension is typed over where it stands: the end node goes along its edge.
      await page.getByTestId("fit").click();
      await page.getByTestId("dimension-length-n1").click();
      await page.getByTestId("dimension-length-n1-field").fill("1250/2-25");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByTestId("dimension-length-n1").textContent()).toBe("600.0");
      await page.getByTestId("dimension-length-n2").click();
      await page.getByTestId("dimension-length-n2-field").fill("360");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.getByTestId("dimension-length-n2").textContent()).toBe("360.0");

      // The rear edge is made a curve where it lies, bent by the handle at its start, and its comb read.
      await clickAt(page, "plan", [800, 200]);
      await page.getByTestId("edge-curved").click();
      await pull(page, page.getByTestId("tangent-out-n2"), [50, 30]);
      await page.keyboard.press("k");
      await expect
        .poll(() => page.getByTestId("comb-words").textContent())
        .toMatch(/least radius \d+\.\d mm/);
      await page.getByTestId("edge-straight").click();
      await page.keyboard.press("k");

      // A hole over the front edge, and what a new line would snap to.
      await page.getByTestId("tool-opening").click();
      await page.getByTestId("opening-shape").selectOption("circle");
      await clickAt(page, "plan", [200, 250]);
      await page.keyboard.type("80");
      await page.keyboard.press("Enter");
      await page.getByTestId("tool-fence").click();
      expect(await snapAt(page, [203, 332])).toMatch(/^crossing of /);
      await clickAt(page, "plan", [320, 30]);
      const away = Math.hypot(120, 220);
      const touchRad = Math.atan2(-220, 120) + Math.acos(80 / away);
      expect(await snapAt(page, [200 + 80 * Math.cos(touchRad), 250 + 80 * Math.sin(touchRad)])).toMatch(
        /^tangent to /,
      );
      await page.keyboard.press("q");
      expect(await snapAt(page, [203, 332])).toBe("");
      await page.keyboard.press("q");
      await page.keyboard.press("Escape");

      // A fence, cut by the hairline: its tip is pulled deeper in the cross-section, one step to take back.
      await clickAt(page, "plan", [400, 250]);
      await clickAt(page, "plan", [700, 250]);
      await page.keyboard.press("Enter");
      const [x] = await onScreen(page, "plan", [550, 0]);
      const ruler = await page.getByTestId("hairline").boundingBox();
      await page.mouse.click(x, (ruler?.y ?? 0) + (ruler?.height ?? 0) / 2);
      const tip = page.getByTestId("fence-tip-f1");
      await expect.poll(() => tip.isVisible()).toBe(true);
      const before = await depthNow(tip);
      await pull(page, tip, [0, 9], async () => {
        expect(await page.getByTestId("tip-number").textContent()).toMatch(/deep, z /);
      });
      await expect.poll(() => depthNow(tip)).toBeGreaterThan(before + 1);
      await page.keyboard.press("Control+z");
      await expect.poll(() => depthNow(tip)).toBeCloseTo(before, 1);
    }));
});
