import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Download, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drawSection, expectParts, RECTANGLE, textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { readPdf } from "./read-pdf.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** A page's size as the file says it, mm. */
const PAGE_SIZE_MM = 0.01;

async function downloadBy(page: Page, testId: string): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByTestId(testId).click()]);
  return download;
}

async function pdfBy(page: Page, testId: string) {
  const download = await downloadBy(page, testId);
  return readPdf(readFileSync(await download.path()));
}

/** How many pages the print view promises, once it has settled. */
async function promisedPages(page: Page): Promise<number> {
  const count = page.getByTestId("page-count");
  await expect.poll(() => textOf(page, "page-count"), { timeout: 30_000 }).toMatch(/^\d+ pages?/);
  await expect.poll(() => count.getAttribute("data-settled"), { timeout: 30_000 }).toBe("true");
  return Number.parseInt(await textOf(page, "page-count"), 10);
}

describe("printing", () => {
  it("makes as many template pages as it promised, each an A4 page, with every part on them", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await expectParts(page, ["S1R 600.0 × 300.0 mm", "S1L 600.0 × 300.0 mm"]);
      await page.getByTestId("stage-print").click();
      const promised = await promisedPages(page);
      const { pages } = await pdfBy(page, "make-templates");
      expect(pages).toHaveLength(promised);
      for (const { widthMm, heightMm } of pages) {
        const sides = [widthMm, heightMm].sort((a, b) => a - b);
        expect(Math.abs((sides[0] ?? 0) - 210)).toBeLessThan(PAGE_SIZE_MM);
        expect(Math.abs((sides[1] ?? 0) - 297)).toBeLessThan(PAGE_SIZE_MM);
      }
      const text = pages.map((one) => one.text).join(" ");
      expect(text).toContain("S1R");
      expect(text).toContain("S1L");
    }, visitEmptySheet));

  it("makes the build book of the demo tray, with every part in it", () =>
    asVisitor(async ({ page }) => {
      const codes = await page.getByTestId("shelf-part").locator(".code").allTextContents();
      await page.getByTestId("stage-print").click();
      const { pages } = await pdfBy(page, "make-book");
      const text = pages.map((one) => one.text).join(" ");
      for (const code of codes) expect(text).toContain(code);
    }));

  it("stops writing when it is told to, and can begin again", () =>
    asVisitor(async ({ page }) => {
      await page.getByTestId("stage-print").click();
      await promisedPages(page);
      let downloads = 0;
      page.on("download", () => {
        downloads += 1;
      });
      await page.getByTestId("make-templates").click();
      await page.getByTestId("cancel-writing").click();
      await expect.poll(() => page.getByTestId("make-templates").isEnabled()).toBe(true);
      expect(downloads).toBe(0);
      const { pages } = await pdfBy(page, "make-templates");
      expect(pages.length).toBeGreaterThan(1);
    }));

  it("says how far a job of 300 pages is, and stopped midway leaves nothing behind", () =>
    asVisitor(async ({ page, complaints }) => {
      await page.getByTestId("stage-print").click();
      await page.getByTestId("template-way").selectOption("full");
      await expect.poll(() => promisedPages(page)).toBeGreaterThanOrEqual(300);
      const promised = await promisedPages(page);
      let downloads = 0;
      page.on("download", () => {
        downloads += 1;
      });
      await page.getByTestId("make-templates").click();
      const far = async () => {
        const words = await page.getByTestId("writing").textContent();
        const [, done, all] = /Page (\d+) of (\d+)/.exec(words ?? "") ?? [];
        return { done: Number(done ?? 0), all: Number(all ?? 0) };
      };
      await expect.poll(async () => (await far()).done, { interval: 5 }).toBeGreaterThan(0);
      const { done, all } = await far();
      expect(all).toBe(promised);
      expect(done).toBeLessThan(promised);
      await page.getByTestId("cancel-writing").click();
      await page.getByTestId("writing").waitFor({ state: "detached" });
      expect(await page.getByTestId("page-count").isVisible()).toBe(true);
      expect(await page.getByRole("alert").count()).toBe(0);
      await page.getByTestId("template-way").selectOption("table");
      await expect.poll(() => promisedPages(page)).toBeLessThan(promised);
      expect(downloads).toBe(0);
      expect(complaints).toEqual([]);
    }));

  it("makes everything as one archive that can be unpacked", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await page.getByTestId("stage-print").click();
      await promisedPages(page);
      const download = await downloadBy(page, "make-everything");
      expect(download.suggestedFilename()).toMatch(/-everything\.zip$/);
      const files = unzipSync(readFileSync(await download.path()));
      expect(Object.keys(files)).toEqual(
        expect.arrayContaining(["build-book.pdf", "templates.pdf", "svg/S1R.svg", "csv/parts.csv"]),
      );
      const { pages } = await readPdf(Buffer.from(files["templates.pdf"] ?? []));
      expect(pages.map(({ text }) => text).join(" ")).toContain("S1R");
    }, visitEmptySheet));

  it("brings what is looked at to the print dialog of the browser, as a PDF", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await page.getByTestId("stage-print").click();
      await promisedPages(page);
      await page.getByTestId("print-now").click();
      const frame = page.locator("#printed-pages");
      await frame.waitFor({ state: "attached" });
      const head = await frame.evaluate(async (element) => {
        const url = element instanceof HTMLIFrameElement ? element.src : "";
        return (await (await fetch(url)).text()).slice(0, 5);
      });
      expect(head).toBe("%PDF-");
    }, visitEmptySheet));

  it("prints fewer pages where parts are marked out by their tables, and says what each way takes", () =>
    asVisitor(async ({ page }) => {
      await drawSection(page, RECTANGLE);
      await page.getByTestId("stage-print").click();
      const byCurves = await promisedPages(page);
      await page.getByTestId("template-way").selectOption("full");
      await expect.poll(() => promisedPages(page)).toBeGreaterThan(byCurves);
      await page.locator(".template-ways summary").click();
      const row = page.getByTestId("template-ways").locator("tr", { hasText: "S1R" });
      expect(Number(await row.locator("td").nth(3).textContent())).toBeGreaterThan(
        Number(await row.locator("td").nth(5).textContent()),
      );
      const whole = await promisedPages(page);
      await row.locator("select").selectOption("table");
      await expect.poll(() => promisedPages(page)).toBeLessThan(whole);
    }, visitEmptySheet));
});
