import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import type { Item, Profile, Project } from "../../core/project/index.ts";
import { type BoardView, clickAt, onScreen, type Place, textOf } from "./board.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

/** What a builder who has never drawn on a computer may need for a whole floor. */
const MOST_ACTIONS = 40;
const MOST_MINUTES = 5;

/** A hand that counts what it does: a click, a double click, a key, or a number typed into a field. */
function countingHand(page: Page) {
  let actions = 0;
  const counted = async (act: () => Promise<void>) => {
    actions += 1;
    await act();
  };
  return {
    actions: () => actions,
    press: (testId: string) => counted(() => page.getByTestId(testId).click()),
    key: (key: string) => counted(() => page.keyboard.press(key)),
    click: (view: BoardView, place: Place) => counted(() => clickAt(page, view, place)),
    doubleClick: (view: BoardView, place: Place) =>
      counted(async () => {
        const [x, y] = await onScreen(page, view, place);
        await page.mouse.dblclick(x, y);
      }),
    type: (testId: string, text: string) =>
      counted(async () => {
        await page.getByTestId(testId).fill(text);
        await page.keyboard.press("Enter");
      }),
  };
}

it("draws a floor of two sections, two fences and a ramp from an empty page in forty actions", () =>
  asVisitor(async ({ page }) => {
    const startedMs = Date.now();
    const hand = countingHand(page);
    await hand.press("menu");
    await hand.press("menu-new");

    // The centre floor, and its ramp from x 1400 on with a bend of radius 900.
    await hand.press("tool-section");
    for (const corner of [
      [0, 0],
      [0, 250],
      [2000, 250],
      [2000, 0],
      [0, 0],
    ] as const)
      await hand.click("plan", corner);
    await hand.press("choose-profile-of-section");
    await hand.doubleClick("side", [1400, 60]);
    const profile = page.locator("[data-chosen-row]");
    await profile.waitFor();
    const nodeId = (await profile.getAttribute("data-testid"))?.split("node-").at(-1) ?? "";
    await hand.type(`node-${nodeId}-x`, "1400");
    await hand.type(`node-${nodeId}-radius`, "900");
    await hand.type("node-n2-z", "60 + 700*0.27");

    // The outer floor along it, on the same profile.
    await hand.press("tool-section");
    for (const corner of [
      [0, 250],
      [0, 500],
      [2000, 600],
      [2000, 250],
      [0, 250],
    ] as const)
      await hand.click("plan", corner);
    await hand.press("follow-n4");

    for (const y of [300, 450]) {
      await hand.press("tool-fence");
      await hand.click("plan", [400, y]);
      await hand.click("plan", [1300, y]);
      await hand.key("Enter");
    }
    await expect.poll(() => textOf(page, "problems")).toMatch(/nothing open/i);
    const minutes = (Date.now() - startedMs) / 60_000;
    process.stdout.write(`  a floor in ${hand.actions()} actions, ${minutes.toFixed(1)} min by machine\n`);
    expect(hand.actions()).toBeLessThanOrEqual(MOST_ACTIONS);
    expect(minutes).toBeLessThan(MOST_MINUTES);
    await page.screenshot({ path: "out/five-minutes.png" });

    const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Control+s")]);
    const project = JSON.parse(readFileSync(await file.path(), "utf8")) as Project;
    expect(project.profiles.map(placesOfProfile)).toEqual([
      [
        [-100, 60],
        [1400, 60, 900],
        [2100, 249],
      ],
    ]);
    expect(project.items.map(placesOfItem)).toEqual([
      ["Section 1", [0, 0], [0, 250], [2000, 250], [2000, 0]],
      ["Section 2", [0, 500], [2000, 600], "follows s1"],
      ["Fence 1", [400, 300], [1300, 300]],
      ["Fence 2", [400, 450], [1300, 450]],
    ]);
  }));

const placesOfProfile = ({ nodes }: Profile) =>
  nodes.map(({ x, z, radiusMm }) => (radiusMm === undefined ? [x, z] : [x, z, radiusMm]));

function placesOfItem(item: Item) {
  if (item.kind !== "section" && item.kind !== "fence") return [item.name];
  const { elements } = item.kind === "fence" ? item.line : item.outline;
  const places = elements.map((one) => (one.kind === "node" ? [one.x, one.y] : `follows ${one.edge.itemId}`));
  return [item.name, ...places];
}
