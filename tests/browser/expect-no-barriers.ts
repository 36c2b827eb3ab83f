import type { Page } from "playwright-core";
import { expect } from "vitest";
import { bringAxe, findBarriers } from "./find-barriers.ts";
import { screens } from "./screens.ts";

/** Phone, tablet upright, desk: px. */
export const PHONE = { width: 390, height: 844 };
export const TABLET = { width: 768, height: 1024 };
export const DESK = { width: 1440, height: 900 };

/** Dozens of runs of all rules. */
export const LONG_MS = 400_000;

/** Expects that axe-core finds no barrier on any screen at this size, light and dark. */
export async function expectNoBarriers(page: Page, size: typeof DESK): Promise<void> {
  const barriers: string[] = [];
  await bringAxe(page);
  await page.setViewportSize(size);
  for (const { name, open, leave, onDeskOnly } of screens) {
    if (onDeskOnly && size !== DESK) continue;
    await open(page);
    const inLight = await findBarriers(page, "all");
    await page.emulateMedia({ colorScheme: "dark" });
    await page.locator("html[data-light=dark]").waitFor({ state: "attached" });
    const inDark = await findBarriers(page, "colours only");
    await page.emulateMedia({ colorScheme: "light" });
    await page.locator("html[data-light=light]").waitFor({ state: "attached" });
    await leave?.(page);
    const found = [...inLight, ...inDark.map((line) => `dark: ${line}`)];
    barriers.push(...found.map((line) => `${name}: ${line}`));
  }
  expect(barriers).toEqual([]);
}
