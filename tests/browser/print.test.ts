import { existsSync, readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Browser, Download, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { type Project, writeProject } from "../../core/project/index.ts";
import { readExample } from "../read-example.ts";
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

/** The sheet of the practice piece so many times beside itself, every pattern whole. */
function manySheets(count: number): Project {
  const practice = readExample("practice-piece");
  const items = practice.items.flatMap((item) =>
    item.kind !== "section"
      ? []
      : Array.from({ length: count }, (_, k) => ({
          ...item,
          id: `${item.id}x${k}`,
          number: k + 1,
          outline: {
            ...item.outline,
            elements: item.outline.elements.map((element) =>
              element.kind === "node"
                ? { ...element, id: `${element.id}x${k}`, y: element.y + 300 * k }
                : element,
            ),
          },
        })),
  );
  return { ...practice, items, paper: { ...practice.paper, templateWay: "full" } };
}

/** The most memory that any process with a page in it has held, MB, where the system tells it (Linux). */
async function largestRendererMb(browser: Browser | null): Promise<number | undefined> {
  const session = await browser?.newBrowserCDPSession();
  const { processInfo = [] } = (await session?.send("SystemInfo.getProcessInfo")) ?? {};
  const peaks = processInfo.flatMap(({ id, type }) => {
    const status = `/proc/${id}/status`;
    if (type !== "renderer" || !existsSync(status)) return [];
    const [, kb] = /VmHWM:\s+(\d+) kB/.exec(readFileSync(status, "utf8")) ?? [];
    return kb === undefined ? [] : [Number(kb) / 1000];
  });
  return peaks.length > 0 ? Math.max(...peaks) : undefined;
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

  it(
    "says how far a job of 300 pages is, stopped midway leaves nothing behind, and let alone writes every page",
    { timeout: 300_000 },
    () =>
      asVisitor(async ({ context, page, complaints }) => {
        await page.getByTestId("menu").click();
        const [chooser] = await Promise.all([
          page.waitForEvent("filechooser"),
          page.getByTestId("menu-open").click(),
        ]);
        const buffer = Buffer.from(writeProject(manySheets(50)));
        await chooser.setFiles({ name: "many.json", mimeType: "application/json", buffer });
        await page.getByTestId("shelf-part").first().waitFor({ timeout: 90_000 });
        await page.getByTestId("stage-print").click();
        await expect.poll(() => promisedPages(page), { timeout: 90_000 }).toBeGreaterThanOrEqual(300);
        const promised = await promisedPages(page);
        const beforeMb = await largestRendererMb(context.browser());
        let downloads = 0;
        page.on("download", () => {
          downloads += 1;
        });
        // A page takes a few milliseconds: the cancel button is pressed from inside, at the first page that is told.
        const stopped = page.evaluate(
          () =>
            new Promise<string>((resolve) => {
              const observer = new MutationObserver(() => {
                const words = document.querySelector("[data-testid=writing]")?.textContent ?? "";
                if (!/Page [1-9]/.test(words)) return;
                observer.disconnect();
                document.querySelector<HTMLButtonElement>("[data-testid=cancel-writing]")?.click();
                resolve(words);
              });
              observer.observe(document.body, { subtree: true, childList: true, characterData: true });
            }),
        );
        await page.getByTestId("make-templates").click();
        const [, done, all] = (/Page (\d+) of (\d+)/.exec(await stopped) ?? []).map(Number);
        expect(all).toBe(promised);
        expect(done).toBeLessThan(promised);
        await page.getByTestId("writing").waitFor({ state: "detached" });
        expect(await page.getByTestId("page-count").isVisible()).toBe(true);
        expect(await page.getByRole("alert").count()).toBe(0);
        expect(await page.getByTestId("make-templates").isEnabled()).toBe(true);
        expect(downloads).toBe(0);
        const told = page.evaluate(
          () =>
            new Promise<readonly number[]>((resolve) => {
              const counts: number[] = [];
              const observer = new MutationObserver(() => {
                const bar = document.querySelector("[data-testid=writing]");
                const [, count] = /Page (\d+)/.exec(bar?.textContent ?? "") ?? [];
                if (count !== undefined) counts.push(Number(count));
                if (bar || counts.length === 0) return;
                observer.disconnect();
                resolve(counts);
              });
              observer.observe(document.body, { subtree: true, childList: true, characterData: true });
            }),
        );
        const { pages } = await pdfBy(page, "make-templates");
        expect(pages).toHaveLength(promised);
        const counts = await told;
        expect(new Set(counts).size).toBeGreaterThan(5);
        expect(counts).toEqual(counts.toSorted((a, b) => a - b));
        const peakMb = await largestRendererMb(context.browser());
        // On top of the page with its tray of fifty sheets and the pictures of its pages.
        if (peakMb !== undefined && beforeMb !== undefined) expect(peakMb - beforeMb).toBeLessThan(500);
        expect(complaints).toEqual([]);
      }, visitEmptySheet),
  );

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
