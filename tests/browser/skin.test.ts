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

it("a hard insert ends the foam inside the drawn edge: its width is typed, and the flat part shows both", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-skin").click();
    await page.getByTestId("edge-finish").selectOption("insert");
    const width = page.locator('[data-setting="laminate.insertMm"]');
    await width.fill("15");
    await page.keyboard.press("Enter");
    await expect
      .poll(() => page.getByTestId("skin-edges").textContent())
      .toContain("the pattern ends 15.0 mm inside the drawn edge");
    await page.getByTestId("stage-sheets").click();
    await expect.poll(() => page.getByTestId("edge-table").textContent()).toContain("hard insert of 15.0 mm");
    expect(await page.locator(".part-drawing .finished-edge").count()).toBe(1);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await expect.poll(() => page.getByTestId("edge-table").textContent()).not.toContain("hard insert");
  }));

it("every ply of a face shows where its patches lie, and a patch that is chosen tells its figures", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-skin").click();
    const map = page.getByTestId("patch-map-lower-face");
    await map.waitFor({ timeout: 30_000 });
    await page.getByTestId("patch-S1-L.1").focus();
    await expect
      .poll(() => map.getByTestId("patch-figures").textContent())
      .toMatch(/^S1-L\.1: .* session 1\.$/);
    await map.getByText("2", { exact: true }).click();
    await page.getByTestId("patch-T1R-L.2").waitFor();
    expect(await page.getByTestId("patch-S1-L.1").count()).toBe(0);
  }));

it("a fence is offered a panel only where it can be cut from one, and else the reason stands there", () =>
  asVisitor(async ({ page }) => {
    const reasonOf = async (itemId: string) => {
      await page.keyboard.press("Escape");
      await page.getByTestId(`choose-${itemId}`).click();
      expect(await page.getByTestId("from-panel").isDisabled()).toBe(true);
      return page.getByTestId("no-panel").textContent();
    };
    expect(await reasonOf("f2")).toMatch(/leaves the straight by \d+\.\d mm/);
    expect(await reasonOf("f1")).toContain("sits on the foam");
  }));
