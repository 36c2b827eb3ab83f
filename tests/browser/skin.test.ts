import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();
/** A change is planned anew in the worker. */
const FOLLOWS = { timeout: 30_000, interval: 50 };

it("a pot is told in grams once the supplier's ratio is typed, and no session is planned in the cold", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-skin").click();
    const face = page.getByTestId("skin-lower-face");
    await face.waitFor();
    const type = async (setting: string, value: string) => {
      await page.locator(`[data-setting="laminate.${setting}"]`).fill(value);
      await page.keyboard.press("Enter");
    };
    await type("hardenerPer100", "0");
    await expect.poll(() => face.getByTestId("pots").first().textContent()).toContain("?");
    await type("hardenerPer100", "40");
    await expect.poll(() => face.getByTestId("pots").first().textContent()).not.toContain("?");
    const cells = await face.getByTestId("pots").first().locator("tbody td").allTextContents();
    const [, mixed, resin, hardener, pigment] = cells.map((words) => Number.parseFloat(words));
    expect((hardener ?? 0) / (resin ?? 1)).toBeCloseTo(0.4, 2);
    expect((hardener ?? 0) + (resin ?? 0) + (pigment ?? 0)).toBeCloseTo(mixed ?? 0, 0);
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
    await expect.poll(() => page.getByTestId("edge-table").textContent()).toContain("hard insert, 15.0 mm");
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

it("a reinforcement zone that is added shows in the picture and in figures, follows what is typed, and goes again", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-skin").click();
    const face = page.getByTestId("skin-lower-face");
    const map = page.getByTestId("patch-map-lower-face");
    await map.waitFor({ timeout: FOLLOWS.timeout });
    expect(await face.getByTestId("zones").count()).toBe(0);
    const drawnPly = (ply: number) => map.getByText(`reinforcement ${ply}`, { exact: true });
    expect(await drawnPly(1).count()).toBe(0);

    await page.getByTestId("add-zone").click();
    const rows = face.getByTestId("zones").locator("tbody tr");
    const figure = (column: number) => async () =>
      Number.parseFloat((await rows.locator("td").nth(column).textContent()) ?? "");
    await expect.poll(() => rows.count(), FOLLOWS).toBe(1);
    // A spot of 80 mm radius and one inside it of 70.
    await expect.poll(figure(2), FOLLOWS).toBe(2);
    await expect.poll(figure(4), FOLLOWS).toBeCloseTo(Math.PI * (0.08 ** 2 + 0.07 ** 2), 2);
    expect(await face.textContent()).toContain("Lay the reinforcement");
    await drawnPly(2).click();
    const patches = map.getByRole("button", { name: /^Z1/ });
    await expect.poll(() => patches.count(), FOLLOWS).toBe(1);
    await patches.click();
    // The inner piece is 140 mm wide each way, told to the next whole millimetre.
    await expect
      .poll(() => map.getByTestId("patch-figures").textContent(), FOLLOWS)
      .toMatch(/14[01] × 14[01]/);
    expect(await drawnPly(3).count()).toBe(0);

    const plies = page.locator('[data-setting="laminate.zones.0.plies"]');
    await plies.fill("3");
    await plies.press("Enter");
    await expect.poll(figure(2), FOLLOWS).toBe(3);
    await expect.poll(figure(4), FOLLOWS).toBeCloseTo(Math.PI * (0.08 ** 2 + 0.07 ** 2 + 0.06 ** 2), 2);

    await expect.poll(() => drawnPly(3).count(), FOLLOWS).toBe(1);

    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(figure(2), FOLLOWS).toBe(2);
    await expect.poll(() => drawnPly(3).count(), FOLLOWS).toBe(0);
    expect(await plies.inputValue()).toBe("2");
    await page.getByRole("button", { name: "Redo" }).click();
    await expect.poll(figure(2), FOLLOWS).toBe(3);

    await drawnPly(1).click();
    await page.getByRole("button", { name: "Take zone 1 away" }).click();
    await expect.poll(() => face.getByTestId("zones").count(), FOLLOWS).toBe(0);
    await expect.poll(() => drawnPly(1).count(), FOLLOWS).toBe(0);
    expect(await page.getByTestId("zone-1").count()).toBe(0);
  }));
