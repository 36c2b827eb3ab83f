import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { launchChromium, visit } from "./launch.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium(inject("chromiumPath"));
});
afterAll(() => browser?.close());

describe("a first visit", () => {
  it("opens the demo tray and complains of nothing", async () => {
    const { page, complaints, context } = await visit(browser, inject("address"));
    await page.getByTestId("truth-line").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
