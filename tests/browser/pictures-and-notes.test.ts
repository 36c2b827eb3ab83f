import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Project } from "../../core/project/index.ts";
import { clickAt, drag, onScreen, partsOnShelf, textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** A scanned plan, 400 by 200 px, with a bar from pixel 100 to pixel 300. */
const SCAN = Buffer.from(
  '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="200"><path d="M100 100H300" stroke="#222" stroke-width="6"/></svg>',
);

/** The tray as its file says it now. */
async function savedProject(page: Page): Promise<Project> {
  const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
  return JSON.parse(readFileSync(await file.path(), "utf8")) as Project;
}

it("lays a picture under the plan to scale, pins a note, and holds what is locked or hidden", () =>
  asVisitor(async ({ page }) => {
    await page.getByTestId("tool-underlay").click();
    const lay = async (name: string, mimeType: string, buffer: Buffer) => {
      const [chooser] = await Promise.all([
        page.waitForEvent("filechooser"),
        page.getByTestId("choose-picture-plan").click(),
      ]);
      await chooser.setFiles({ name, mimeType, buffer });
    };
    await lay("notes.png", "image/png", Buffer.from("no picture at all"));
    await page.getByTestId("notice").waitFor();
    await page.keyboard.press("Escape");
    await lay("scan.svg", "image/svg+xml", SCAN);
    await page.getByTestId("picture-size").waitFor();

    // The bar is 1,000 mm long in truth: it is picked where it lies, and then lies so.
    const before = (await savedProject(page)).underlays[0];
    if (!before) throw new Error("The picture is not in the file.");
    const onPicture = (xPx: number): readonly [number, number] => [
      before.origin.x + xPx * before.mmPerPx,
      before.origin.up - 100 * before.mmPerPx,
    ];
    await page.getByTestId("picture-scale").click();
    await page.keyboard.down("Alt");
    await clickAt(page, "plan", onPicture(100));
    await clickAt(page, "plan", onPicture(300));
    await page.keyboard.up("Alt");
    await page.getByTestId("picture-distance").fill("500*2");
    await page.keyboard.press("Enter");
    await expect.poll(async () => (await savedProject(page)).underlays[0]?.mmPerPx).toBeCloseTo(5, 0);
    await page.getByTestId("picture-strength").fill("30");
    await page.getByTestId("chosen-panel").getByRole("button", { name: /^Lock/ }).click();
    await page.screenshot({ path: "out/picture.png" });

    await page.getByTestId("tool-note").click();
    await clickAt(page, "plan", [700, 450]);
    await page.getByTestId("note-words").waitFor();
    await page.keyboard.type("Keep clear of the exhaust");
    await page.keyboard.press("Control+Enter");

    await page.getByTestId("tool-select").click();
    await clickAt(page, "plan", [600, 563]);
    await page.getByTestId("chosen-panel").getByRole("button", { name: /^Lock/ }).click();
    const locked = await savedProject(page);
    const lockedItem = locked.items.find((item) => item.locked === true);
    await drag(page, "plan", [
      [600, 563],
      [600, 620],
    ]);
    expect((await savedProject(page)).items).toEqual(locked.items);
    const parts = await partsOnShelf(page);
    await page.getByTestId("chosen-panel").getByRole("button", { name: /^Hide/ }).click();
    await expect.poll(() => textOf(page, "truth-line")).toContain("1 hidden");
    expect(await partsOnShelf(page)).toEqual(parts);
    expect(lockedItem).toBeDefined();

    // Changes gather for a quarter of a second before they are written.
    await page.waitForTimeout(1000);
    await page.reload();
    await page.getByTestId("truth-parts").waitFor();
    const after = await savedProject(page);
    expect(after.underlays[0]).toMatchObject({ opacity: 0.3, locked: true });
    expect(after.notes.map(({ text }) => text)).toEqual(["Keep clear of the exhaust"]);
    expect(after.items.filter((item) => item.hidden === true).map(({ id }) => id)).toEqual([lockedItem?.id]);
    await page.screenshot({ path: "out/noted.png" });
  }));

it("takes pictures that are pasted and dropped where the pointer is, and turns and levels them", () =>
  asVisitor(async ({ page, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    const laid = async () => (await savedProject(page)).underlays;
    const [sideX, sideY] = await onScreen(page, "side", [900, 60]);
    await page.mouse.move(sideX, sideY);
    await page.evaluate(copyPicture);
    await page.keyboard.press("Control+v");
    await page.getByTestId("picture-size").waitFor();
    expect((await laid()).map(({ view }) => view)).toEqual(["side"]);

    const [planX, planY] = await onScreen(page, "plan", [900, 100]);
    await page.evaluate(dropPicture, { x: planX, y: planY });
    await expect.poll(async () => (await laid()).map(({ view }) => view)).toEqual(["side", "plan"]);

    // A line that falls by a fifth on the picture is levelled: the picture turns by that angle.
    const { origin, mmPerPx } = (await laid())[1] ?? { origin: { x: 0, up: 0 }, mmPerPx: 1 };
    const onPicture = (xPx: number, downPx: number) =>
      [origin.x + xPx * mmPerPx, origin.up - downPx * mmPerPx] as const;
    await page.getByTestId("picture-level").click();
    await page.keyboard.down("Alt");
    await clickAt(page, "plan", onPicture(40, 40));
    await clickAt(page, "plan", onPicture(140, 60));
    await page.keyboard.up("Alt");
    await expect.poll(async () => (await laid())[1]?.turnRad).toBeCloseTo(Math.atan(0.2), 1);
    await page.getByLabel("Turned").fill("180/2");
    await page.keyboard.press("Enter");
    await expect.poll(async () => (await laid())[1]?.turnRad).toBeCloseTo(Math.PI / 2, 6);
    await page.screenshot({ path: "out/pasted.png" });

    // Text that is no part of a drawing is answered in words, and a part of one is set down by the same key.
    await page.getByTestId("tool-select").click();
    await page.evaluate(() => navigator.clipboard.writeText("x,y"));
    await page.keyboard.press("Control+v");
    await page.getByText("not part of a drawing").waitFor();
    const before = (await savedProject(page)).items.length;
    await page.getByTestId("drawing").focus();
    await page.keyboard.press("Escape");
    await page.getByTestId("choose-f1").first().click();
    await page.getByTestId("drawing").focus();
    await page.keyboard.press("Control+c");
    await page.keyboard.press("Control+v");
    await expect.poll(async () => (await savedProject(page)).items.length).toBe(before + 1);
  }));

/** In the page: a picture of 200 by 160 px on the clipboard. */
async function copyPicture(): Promise<void> {
  const canvas = Object.assign(document.createElement("canvas"), { width: 200, height: 160 });
  canvas.getContext("2d")?.fillRect(20, 20, 100, 100);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (blob) await navigator.clipboard.write([new ClipboardItem({ "image/png": blob })]);
}

/** In the page: a picture file let go over the board. */
async function dropPicture({ x, y }: { readonly x: number; readonly y: number }): Promise<void> {
  const canvas = Object.assign(document.createElement("canvas"), { width: 200, height: 160 });
  canvas.getContext("2d")?.fillRect(20, 20, 100, 100);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  if (!blob) return;
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File([blob], "photo.png", { type: "image/png" }));
  const drop = new DragEvent("drop", {
    bubbles: true,
    cancelable: true,
    clientX: x,
    clientY: y,
    dataTransfer,
  });
  document.elementFromPoint(x, y)?.dispatchEvent(drop);
}
