import { describe, expect, it } from "vitest";
import { bringAxe, findBarriers } from "./find-barriers.ts";
import { screens } from "./screens.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

const DESK = { width: 1440, height: 900 };
/** Phone, tablet upright, desk: px. */
const SIZES = [{ width: 390, height: 844 }, { width: 768, height: 1024 }, DESK];

/** More than a hundred runs of all rules. */
const LONG_MS = 400_000;

describe("every screen", () => {
  it(
    "has no barrier that axe-core finds, on phone, tablet and desk, light and dark",
    () =>
      asVisitor(async ({ page }) => {
        const barriers: string[] = [];
        await bringAxe(page);
        for (const size of SIZES) {
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
            barriers.push(...found.map((line) => `${size.width} px, ${name}: ${line}`));
          }
        }
        expect(barriers).toEqual([]);
      }),
    LONG_MS,
  );
});
