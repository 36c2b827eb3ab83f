import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { clickAt, drag, drawSection, type Place, textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

/** A centre section that ends on the centre line, and a second one 150 mm outside it. */
const CENTRE: readonly Place[] = [
  [200, 0],
  [1400, 0],
  [1400, 200],
  [200, 200],
];
const OUTER: readonly Place[] = [
  [200, 350],
  [1400, 350],
  [1400, 600],
  [200, 600],
];

/** Work is written a moment after the last change. */
const KEPT_AFTER_MS = 1000;

const codesOnShelf = (page: Page): Promise<readonly string[]> =>
  page.getByTestId("shelf-part").locator(".code").allTextContents();

const expectCodes = (page: Page, codes: readonly string[]): Promise<void> =>
  expect.poll(() => codesOnShelf(page)).toEqual(codes);

async function drawTwoAndTransition(page: Page): Promise<void> {
  await drawSection(page, CENTRE);
  await drawSection(page, OUTER);
  await expectCodes(page, ["S1", "S2R", "S2L"]);
  await page.getByTestId("tool-transition").click();
  await clickAt(page, "plan", [800, 200]);
  await clickAt(page, "plan", [800, 350]);
  await expectCodes(page, ["S1", "S2R", "S2L", "T1R", "T1L"]);
}

describe("transitions, openings and plates by hand", () => {
  it("draws two sections, a transition between them, an opening and a plate, and has them all after a reload", () =>
    asVisitor(async ({ page }) => {
      await drawTwoAndTransition(page);
      const whole = await page.getByTestId("flat-S2R").locator("path.outline").getAttribute("d");

      await page.getByTestId("tool-opening").click();
      await page.getByTestId("opening-shape").selectOption("circle");
      await clickAt(page, "plan", [800, 480]);
      await page.getByTestId("typed-length").fill("60");
      await page.keyboard.press("Enter");
      await expect.poll(() => textOf(page, "chosen")).toContain("Opening 1");
      expect(await page.getByTestId("circle-radius").inputValue()).toBe("60.0");
      await expect
        .poll(() => page.getByTestId("flat-S2R").locator("path.outline").getAttribute("d"))
        .not.toBe(whole);

      await page.getByTestId("tool-plate").click();
      const corners: readonly Place[] = [
        [600, 0],
        [1000, 0],
        [1000, 120],
        [600, 120],
      ];
      for (const corner of corners) await clickAt(page, "plan", corner);
      await page.keyboard.press("Enter");
      await expect.poll(() => textOf(page, "chosen")).toContain("Plate 1");
      await clickAt(page, "plan", [1000, 60]);
      await page.getByTestId("add-wing").click();
      await page.getByTestId("wing-w1").waitFor();

      await page.waitForTimeout(KEPT_AFTER_MS);
      await page.reload();
      await expectCodes(page, ["S1", "S2R", "S2L", "T1R", "T1L"]);
      const things = await page.getByTestId("chosen-panel").locator(".things .code").allTextContents();
      expect(things).toEqual(["S1", "S2", "T1", "P1", "O1"]);
      await page.getByTestId("choose-o1").click();
      expect(await page.getByTestId("circle-radius").inputValue()).toBe("60.0");
      await page.keyboard.press("Escape");
      await page.getByTestId("choose-pl1").click();
      expect(await page.getByTestId("wing-w1").count()).toBe(1);
    }));

  it("draws a transition to a free edge and lifts it in the side view, in one step back each", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, CENTRE);
      await page.getByTestId("tool-transition").click();
      await clickAt(page, "plan", [800, 200]);
      await page.getByTestId("drawn-height").fill("80");
      await clickAt(page, "plan", [200, 400]);
      await clickAt(page, "plan", [1400, 400]);
      await page.keyboard.press("Enter");
      await expectCodes(page, ["S1", "T1R", "T1L"]);
      const height = () => page.getByTestId("second-node-n2-z").inputValue();
      expect(await height()).toBe("80.0");
      await drag(page, "side", [
        [1400, 80],
        [1400, 120],
      ]);
      await expect.poll(height).toBe("120.0");
      await page.keyboard.press("Control+z");
      await expect.poll(height).toBe("80.0");
      await page.keyboard.press("Control+z");
      await expectCodes(page, ["S1"]);
    }));

  it("eases a free edge: twist before and after, and one step back", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, CENTRE);
      await page.getByTestId("tool-transition").click();
      await clickAt(page, "plan", [800, 200]);
      for (const [x, z] of [
        [200, 80],
        [800, 92],
        [1400, 80],
      ] as const) {
        await page.getByTestId("drawn-height").fill(String(z));
        await clickAt(page, "plan", [x, 400]);
      }
      await page.keyboard.press("Enter");
      await expectCodes(page, ["S1", "T1R", "T1L"]);
      const heights = () =>
        Promise.all(["n1", "n2", "n3"].map((id) => page.getByTestId(`second-node-${id}-z`).inputValue()));
      expect(await heights()).toEqual(["80.0", "92.0", "80.0"]);

      await page.getByTestId("ease-band").fill("20");
      await page.getByTestId("ease-look").click();
      const eased = page.getByTestId("easing");
      await eased.waitFor();
      const [before = 0, after = 0] = (
        await eased.locator("tbody tr").first().locator("td + td").allTextContents()
      ).map((text) => Number.parseFloat(text));
      expect(after).toBeLessThan(before / 4);
      await page.getByTestId("ease-take").click();
      await expect.poll(async () => (await heights())[1]).not.toBe("92.0");
      await page.keyboard.press("Control+z");
      await expect.poll(heights).toEqual(["80.0", "92.0", "80.0"]);
    }));

  it("takes both edges by the keys alone", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, CENTRE);
      await drawSection(page, OUTER);
      await page.getByTestId("tool-transition").click();
      await page.getByTestId("drawing").focus();
      for (const key of ["n", "n", "n", "Enter", "n", "n", "n", "n", "n", "Enter"])
        await page.keyboard.press(key);
      await expectCodes(page, ["S1", "S2R", "S2L", "T1R", "T1L"]);
    }));
});
