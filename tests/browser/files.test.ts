import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drawSection, expectParts, partsOnShelf, RECTANGLE, startNew, textOf } from "./board.ts";
import { visit, visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

const DRAWN = ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"];

async function open(page: Page, name: string, text: string): Promise<void> {
  await page.getByTestId("menu").click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByTestId("menu-open").click(),
  ]);
  await chooser.setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

async function savedText(page: Page): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return readFileSync(await download.path(), "utf8");
}

/** Work is written a moment after the last change. */
const KEPT_AFTER_MS = 1000;

describe("the work", () => {
  it("is back after a reload", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      await page.waitForTimeout(KEPT_AFTER_MS);
      await page.reload();
      await expectParts(page, DRAWN);
    }));

  it("is saved as a file, and opened from it again the same", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      const text = await savedText(page);
      await startNew(page);
      await open(page, "saved.json", text);
      await expectParts(page, DRAWN);
      expect(await savedText(page)).toBe(text);
    }));

  const broken: readonly (readonly [string, string, RegExp])[] = [
    ["no JSON", "not a project at all", /not JSON/],
    ["cut off", '{"format": "traywright", "version": 1, "items": [', /cut off/],
    ["of another program", '{"name": "something else"}', /not a Traywright project/],
    ["of a newer version", '{"format": "traywright", "version": 999}', /newer/],
    ["with faults", '{"format": "traywright", "version": 1}', /missing/],
  ];
  it("is untouched by a file that is none of ours, which gets a clear message", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, DRAWN);
      for (const [name, text, words] of broken) {
        await open(page, `${name}.json`, text);
        await page.getByTestId("notice").waitFor();
        expect(await textOf(page, "notice")).toContain(`${name}.json`);
        expect(await textOf(page, "notice")).toMatch(words);
        await page.getByTestId("notice-close").click();
        await expectParts(page, DRAWN);
      }
    }));

  it("goes on without a network: reload, change, print", () =>
    asVisitor(async ({ page, context }) => {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await page.reload();
      await page.getByTestId("truth-parts").waitFor();
      const parts = await partsOnShelf(page);
      await context.setOffline(true);
      await page.reload();
      await expectParts(page, parts);
      await page.getByTestId("stage-print").click();
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByTestId("make-templates").click(),
      ]);
      expect(
        readFileSync(await download.path())
          .subarray(0, 5)
          .toString(),
      ).toBe("%PDF-");
      await context.setOffline(false);
    }, visit));
});
