import { readFile } from "node:fs/promises";
import { expect, it } from "vitest";
import { readCalendar } from "../core/writers/read-calendar.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

it("a lost day is taken out of the calendar and given back, and the calendar is handed over as a file", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-glue").click();
    const calendar = page.getByTestId("calendar");
    await calendar.waitFor();
    const words = () => calendar.textContent();
    const day = calendar.getByTestId(/^day-/).first();
    await day.click();
    await expect.poll(words).toContain("One day is lost");
    await expect.poll(() => day.getAttribute("aria-pressed")).toBe("true");
    await day.click();
    await expect.poll(words).not.toContain("One day is lost");

    const [saved] = await Promise.all([
      page.waitForEvent("download"),
      calendar.getByTestId("save-calendar").click(),
    ]);
    expect(saved.suggestedFilename()).toMatch(/\.ics$/);
    const file = readCalendar(await readFile(await saved.path(), "utf8"));
    expect(file.components.length).toBeGreaterThan(20);

    await page.locator('[data-setting="laminate.shopCelsius"]').fill("8");
    await page.keyboard.press("Enter");
    await expect.poll(() => page.getByRole("article").textContent()).toContain("never set");
    expect(await calendar.count()).toBe(0);
  }));

it("a sheet is put later in the order of gluing, what that costs is told, and it is taken back", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-glue").click();
    const cards = page.getByTestId("glue-step");
    await cards.first().waitFor();
    const titles = async () =>
      (await cards.locator("h3").allTextContents()).filter((title) => /Lay/.test(title));
    const before = await titles();
    await page.getByTestId("later").first().click();
    await expect.poll(titles, { timeout: 20_000 }).not.toEqual(before);
    await expect.poll(() => page.getByTestId("truth-line").textContent()).toContain("1 thing");
    await page.getByTestId("wishes").getByRole("button").first().click();
    await expect.poll(titles, { timeout: 20_000 }).toEqual(before);
  }));

it("hours that are written down correct what is left of the same kind of work, and can be taken out again", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-glue").click();
    const hours = page.getByTestId("hours");
    await hours.locator("summary").click();
    const rowOf = (title: string) => hours.getByTestId("hours-row").filter({ hasText: title });
    const planned = (title: string) => rowOf(title).locator("td").nth(1).textContent();
    const [joint, next] = ["1. Glue S1 from", "2. Glue S2R from"];
    const [before, nextBefore] = [Number(await planned(joint)), Number(await planned(next))];
    await page.getByLabel(/^Glue S1 from.*: took, hours/).fill(String(4 * before));
    await page.keyboard.press("Enter");
    await expect.poll(async () => Number(await planned(joint))).toBeCloseTo(4 * before, 1);
    // Shown to a tenth of an hour, and planned in steps of five minutes.
    await expect.poll(async () => Number(await planned(next))).toBeGreaterThan(3 * nextBefore);
    await expect.poll(() => hours.textContent()).toMatch(/Glue has taken .* times what was reckoned/);
    await page.getByLabel(/^Glue S1 from.*: took, hours/).fill("");
    await page.keyboard.press("Enter");
    await expect.poll(async () => Number(await planned(next))).toBe(nextBefore);
  }));
