import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();
const PHONE = { width: 390, height: 844 };

/** Goes to the first card of the bench on which something can be timed. */
async function goToGlue(page: Page): Promise<void> {
  await page.getByTestId("deed-bench").click();
  await page.getByTestId("bench-glue").click();
  while ((await page.getByTestId(/^start-.*-open-1$/).count()) === 0)
    await page.getByTestId("bench-next").click();
}

it("clocks are begun at the bench, go on while the page is closed, and ring until they are heard", () =>
  asVisitor(async ({ page }) => {
    await page.clock.install();
    await page.setViewportSize(PHONE);
    await goToGlue(page);
    const place = await page.getByTestId("bench-place").textContent();
    await page.getByTestId(/^start-.*-open-1$/).click();
    await page.getByTestId(/^start-.*-held$/).click();
    const clocks = page.getByTestId("clocks").locator("li");
    await expect.poll(() => clocks.count()).toBe(2);
    // A tap that begins a clock turns no card.
    expect(await page.getByTestId("bench-place").textContent()).toBe(place);
    expect(await clocks.first().textContent()).toMatch(/glue open/);

    await page.getByTestId("bench-skins").click();
    await page.getByTestId(/^start-.*-film$/).click();
    await expect.poll(() => clocks.count()).toBe(3);
    await clocks
      .filter({ hasText: "first resin" })
      .getByRole("button", { name: /Put away/ })
      .click();
    await expect.poll(() => clocks.count()).toBe(2);

    await page.reload();
    await page.getByTestId("truth-parts").waitFor();
    await expect.poll(() => clocks.count()).toBe(2);
    await page.clock.fastForward("03:00:00");
    await expect.poll(() => clocks.first().textContent()).toMatch(/over by .*Heard/);
    expect(await clocks.first().getByRole("alert").textContent()).toMatch(/no longer takes/);
    await page.getByTestId("clock-hear").first().click();
    await expect.poll(() => page.getByTestId("clock-hear").count()).toBe(0);
    await clocks
      .first()
      .getByRole("button", { name: /Put away/ })
      .click();
    await expect.poll(() => clocks.count()).toBe(1);
  }));
