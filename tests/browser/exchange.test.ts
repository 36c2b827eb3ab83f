import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { textOf } from "./board.ts";
import { visitEmptySheet } from "./launch.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf(visitEmptySheet);

test("a broken file is refused in words, a good one is imported, and its numbers are typed in inches", () =>
  asVisitor(async ({ page }) => {
    await page.keyboard.press("Control+i");
    await page.getByTestId("import-text").fill("x,y\n0,0\n12,4,7\n");
    await expect.poll(() => textOf(page, "import-remarks")).toContain("Line 3: “12,4,7” has three numbers");
    await expect.poll(() => page.getByTestId("import-accept").isDisabled()).toBe(true);
    await page.getByTestId("import-file").setInputFiles({
      name: "floor.svg",
      mimeType: "image/svg+xml",
      buffer: Buffer.from(
        '<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="300mm" viewBox="0 0 600 300"><g transform="translate(0 300) scale(1 -1)"><path d="M0 0H600V200a100 100 0 0 1-100 100H0z" transform="translate(0 0)"/></g></svg>',
      ),
    });
    await page.getByTestId("import-y").fill("300");
    await expect.poll(() => textOf(page, "import-size")).toContain("600.0 × 300.0 mm");
    await page.screenshot({ path: "out/import.png" });
    await page.getByTestId("import-accept").click();
    await expect.poll(() => page.getByTestId("nodes-item-s1").count()).toBe(1);
    const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+e")]);
    expect(file.suggestedFilename()).toBe("section-1-plan.svg");
    expect(readFileSync(await file.path(), "utf8")).toMatch(/width="620mm" height="320mm"/);

    await page.getByTestId("menu").click();
    await page.getByTestId("units").getByText("Inches").click();
    await page.keyboard.press("Escape");
    const x = page.getByTestId("node-n2-x");
    await x.fill("23 5/16");
    await x.press("Enter");
    await expect.poll(() => x.inputValue()).toBe("23 5/16");
    await page.screenshot({ path: "out/inch.png" });
  }));
