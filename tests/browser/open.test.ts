import { describe, expect, it } from "vitest";
import { partsOnShelf, textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

describe("a first visit", () => {
  it("opens the demo tray, computed, without a problem", () =>
    asVisitor(async ({ page }) => {
      expect((await partsOnShelf(page)).length).toBeGreaterThan(4);
      expect(await textOf(page, "problems")).toMatch(/nothing open/i);
      expect(await page.title()).toContain("Traywright");
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
