import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { partsOnShelf, textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** Of script, gzipped, before the board can be drawn on. */
const MOST_SCRIPT_KB = 400;

describe("a first visit", () => {
  it("opens the demo tray, computed, without a problem", () =>
    asVisitor(async ({ page }) => {
      expect((await partsOnShelf(page)).length).toBeGreaterThan(4);
      expect(await textOf(page, "problems")).toMatch(/nothing open/i);
      expect(await page.title()).toContain("Traywright");
    }));

  it("fetches little before the board can be drawn on", () =>
    asVisitor(async ({ page }) => {
      await page.reload();
      await page.getByTestId("drawing").waitFor();
      // The core computes in a worker beside the page, with scripts of its own: the board does not wait for it.
      const own = await page.evaluate(() =>
        [...document.querySelectorAll("script[src], link[rel=modulepreload]")].map((element) =>
          element instanceof HTMLScriptElement
            ? element.src
            : element instanceof HTMLLinkElement
              ? element.href
              : "",
        ),
      );
      const bodies = await Promise.all(own.map(async (url) => (await page.request.get(url)).body()));
      const kB = bodies.reduce((sum, body) => sum + gzipSync(body).length, 0) / 1000;
      process.stdout.write(`  ${own.length} scripts of ${kB.toFixed(0)} kB gzipped before the board\n`);
      expect(own.length).toBeGreaterThan(0);
      expect(kB).toBeLessThan(MOST_SCRIPT_KB);
    }));

  it("asks no other address for anything", () =>
    asVisitor(async ({ page }) => {
      const asked: string[] = [];
      page.on("request", (request) => asked.push(request.url()));
      await page.reload();
      await page.getByTestId("truth-parts").waitFor();
      const { origin } = new URL(page.url());
      expect(
        asked.filter(
          (url) => !url.startsWith(origin) && !url.startsWith("data:") && !url.startsWith("blob:"),
        ),
      ).toEqual([]);
    }));
});
