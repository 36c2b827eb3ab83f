import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** How long the page may take to follow on a busy machine. */
const FOLLOWS = { timeout: 30_000, interval: 50 };

const type = async (page: Page, setting: string, value: string): Promise<void> => {
  const field = page.locator(`[data-setting="${setting}"]`);
  await field.fill(value);
  await field.press("Enter");
};

it("a jig gets ribs along, tabs and a cradle, and says how it is set up and how the tray lifts off", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("stage-jig").click();
    await expect
      .poll(() => page.getByTestId("attitude-means").textContent(), FOLLOWS)
      .toContain("upside down");
    expect(await page.getByTestId("release").textContent()).toContain("lifts straight up");

    await page.getByTestId("setting-jig.along").getByText("At", { exact: true }).click();
    await type(page, "jig.along.atMm", "250");
    await expect.poll(() => page.getByTestId("rib-list").textContent(), FOLLOWS).toContain("L1R");
    await expect
      .poll(() => page.getByTestId("set-up").textContent(), FOLLOWS)
      .toContain("come straight down over them");

    await page.getByTestId("setting-jig.making.foot").getByText("With tabs").click();
    await page.getByTestId("rib-A8").click();
    await expect
      .poll(() => page.getByTestId("rib-view").textContent(), FOLLOWS)
      .toContain("2 slots from below");
    await expect.poll(() => page.getByTestId("rib-view").textContent(), FOLLOWS).toContain("tabs");

    await page.getByTestId("setting-jig.making.cradle").getByText("A second set of ribs").click();
    await expect.poll(() => page.getByTestId("shown-stand").isVisible(), FOLLOWS).toBe(true);
    await page.getByTestId("shown-stand").getByText("Its cradle").click();
    await expect.poll(() => page.getByTestId("rib-list").textContent(), FOLLOWS).toContain("CA3");
    await page.getByTestId("rib-CA12").click();
    await expect.poll(() => page.getByTestId("rib-view").textContent(), FOLLOWS).toContain("open for");

    await page.getByTestId("stage-glue").click();
    await expect
      .poll(() => page.getByText("Turn the tray over into the cradle").count(), FOLLOWS)
      .toBeGreaterThan(0);
  }));
