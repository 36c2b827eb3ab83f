import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { clickAt, drag, expectParts, onScreen, partsOnShelf, textOf } from "./board.ts";
import { listenForComplaints, visitStartPage } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

/** A row of changes is written a moment after the last. */
const KEPT_AFTER_MS = 1000;

const asFirstVisitor = visitorOf(visitStartPage);
const whereStorageIsDenied = visitorOf((browser, address) =>
  visitStartPage(browser, address, (context) =>
    context.addInitScript(() => {
      indexedDB.open = () => {
        throw new DOMException("denied", "SecurityError");
      };
    }),
  ),
);
const whereStorageIsFull = visitorOf((browser, address) =>
  visitStartPage(browser, address, (context) =>
    context.addInitScript(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...args) {
        if (sessionStorage.getItem("storage-is-full") === "yes") {
          throw new DOMException("full", "QuotaExceededError");
        }
        return put.apply(this, args);
      };
    }),
  ),
);

const titles = (page: Page): Promise<readonly string[]> =>
  page.getByTestId("work-row").locator(".work-title").allTextContents();

async function toStartPage(page: Page): Promise<void> {
  await page.getByTestId("menu").click();
  await page.getByTestId("menu-start").click();
  await page.getByTestId("start-page").waitFor();
}

async function rename(page: Page, title: string): Promise<void> {
  await page.getByTestId("menu").click();
  await page.getByTestId("tray-title").fill(title);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await expect.poll(() => textOf(page, "menu")).toContain(title);
}

/** Another tab of the same browser; it begins at the start page. */
async function secondTab(context: BrowserContext, address: string) {
  const page = await context.newPage();
  const complaints = listenForComplaints(page);
  await page.goto(address);
  await page.getByTestId("start-page").waitFor();
  return { page, complaints };
}

async function makeRampedFloor(page: Page): Promise<void> {
  await page.getByTestId("starter-rear-ramp").click();
  await page.getByTestId("make-starter").click();
  await page.getByTestId("truth-parts").waitFor();
  await expect.poll(async () => (await partsOnShelf(page)).length).toBe(7);
}

describe("the works on this device", () => {
  it("begin from a few numbers, come back after a reload, and are changed in one tab at a time", () =>
    asFirstVisitor(async ({ page, context }) => {
      const width = page.getByTestId("starter-number-rearMm");
      const made = page.getByTestId("make-starter");
      await width.fill("3000");
      await expect.poll(() => made.isDisabled()).toBe(true);
      expect(await page.getByTestId("start-page").textContent()).toContain(
        "Width behind is 3000. Type a number from 500 to 2000 mm.",
      );
      await width.fill("1000+300");
      await expect.poll(() => textOf(page, "starter-picture")).toContain("1950.0 × 1300.0");
      await makeRampedFloor(page);
      expect(await textOf(page, "problems")).toMatch(/nothing open/i);
      await rename(page, "Floor one");
      await page.waitForTimeout(KEPT_AFTER_MS);

      await page.reload();
      await page.getByTestId("truth-parts").waitFor();
      expect(await textOf(page, "menu")).toContain("Floor one");

      const second = await secondTab(context, page.url());
      expect(await titles(second.page)).toEqual(["Floor one"]);
      await second.page.getByTestId("start-continue").click();
      await second.page.getByTestId("open-elsewhere").waitFor();
      await second.page.keyboard.press("Control+a");
      await second.page.keyboard.press("Delete");
      await second.page.waitForTimeout(KEPT_AFTER_MS);

      await toStartPage(second.page);
      await second.page.getByTestId("starter-practice-piece").click();
      await second.page.getByTestId("make-starter").click();
      await second.page.getByTestId("truth-parts").waitFor();
      expect(await second.page.getByTestId("open-elsewhere").count()).toBe(0);
      await rename(second.page, "Piece two");
      await second.page.waitForTimeout(KEPT_AFTER_MS);

      await page.reload();
      await expect.poll(async () => (await partsOnShelf(page)).length).toBe(7);
      await toStartPage(page);
      await expect.poll(() => titles(page)).toEqual(["Piece two", "Floor one"]);
      const piece = page.getByTestId("work-row").filter({ hasText: "Piece two" });
      await piece.getByTestId("work-delete").click();
      await page.getByTestId("notice").waitFor();
      expect(await textOf(page, "notice")).toContain("open in another tab");
      await page.getByTestId("notice-close").click();
      await second.page.close();

      await piece.getByTestId("work-delete").click();
      await expect.poll(() => titles(page)).toEqual(["Floor one"]);
      await page.getByTestId("work-put-back").click();
      await expect.poll(() => titles(page)).toEqual(["Piece two", "Floor one"]);
      await piece.getByTestId("work-rename").click();
      await page.getByTestId("work-name").fill("Piece three");
      await page.keyboard.press("Enter");
      await expect.poll(() => titles(page)).toEqual(["Piece three", "Floor one"]);
      await page.getByTestId("start-continue").click();
      await expectParts(page, [expect.stringContaining("S1")]);
      expect(await textOf(page, "menu")).toContain("Piece three");
      expect(second.complaints).toEqual([]);
    }));

  it("are whole after a reload in the middle of a drag", () =>
    asFirstVisitor(async ({ page }) => {
      await makeRampedFloor(page);
      await page.waitForTimeout(KEPT_AFTER_MS);
      const parts = await partsOnShelf(page);
      await clickAt(page, "plan", [1000, 100]);
      const [x, y] = await onScreen(page, "plan", [1950, 225]);
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x, y - 40, { steps: 8 });
      await expect.poll(() => partsOnShelf(page)).not.toEqual(parts);
      await page.waitForTimeout(KEPT_AFTER_MS);
      await page.reload();
      await expectParts(page, parts);
      await page.mouse.up();
      await clickAt(page, "plan", [1000, 100]);
      await drag(page, "plan", [
        [1950, 225],
        [1950, 300],
      ]);
      await expect.poll(() => partsOnShelf(page)).not.toEqual(parts);
    }));

  it("have the change that was made just before a reload", () =>
    asFirstVisitor(async ({ page }) => {
      await makeRampedFloor(page);
      await page.waitForTimeout(KEPT_AFTER_MS);
      await page.getByTestId("menu").click();
      await page.getByTestId("tray-title").fill("Changed and left");
      await page.keyboard.press("Enter");
      await page.reload();
      await expect.poll(() => textOf(page, "menu")).toContain("Changed and left");
    }));
});

describe("where the device keeps nothing", () => {
  it("the page says so, works all the same, and offers the file", () =>
    whereStorageIsDenied(async ({ page }) => {
      expect(await textOf(page, "start-not-kept")).toContain("no storage");
      await makeRampedFloor(page);
      await saveFromNotice(page);
      expect(await textOf(page, "not-kept")).toContain("not kept on this device");
      await toStartPage(page);
      expect(await titles(page)).toEqual(["Floor with rear ramp"]);
    }));

  it("a full device is told at the change that no longer fits, and again no more once there is room", () =>
    whereStorageIsFull(async ({ page }) => {
      await makeRampedFloor(page);
      await page.waitForTimeout(KEPT_AFTER_MS);
      await page.evaluate(() => sessionStorage.setItem("storage-is-full", "yes"));
      await page.getByTestId("menu").click();
      await page.getByTestId("tray-title").fill("One change too many");
      await page.keyboard.press("Enter");
      await saveFromNotice(page);
      expect(await textOf(page, "not-kept")).toContain("storage is full");
      await page.evaluate(() => sessionStorage.setItem("storage-is-full", "no"));
      await page.getByTestId("not-kept").waitFor({ state: "detached" });
      await page.reload();
      await expect.poll(() => textOf(page, "menu")).toContain("One change too many");
    }));
});

async function saveFromNotice(page: Page): Promise<void> {
  await page.getByTestId("notice").waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByTestId("notice-save").click(),
  ]);
  expect(readFileSync(await download.path(), "utf8")).toContain('"format": "traywright"');
}
