import type { Page } from "playwright-core";
import { onScreen, type Place } from "../browser/board.ts";
import { CHROMIUM_ADVICE, findChromium } from "../browser/find-chromium.ts";
import { launchChromium, visit } from "../browser/launch.ts";
import { buildAndServe } from "../browser/serve-app.ts";
import { readExample } from "../read-example.ts";
import { freezePage } from "./frozen-page.ts";

/**
 * Measures, and asserts nothing: nodes of the demo tray are dragged in the built page. For each move of the pointer the
 * time from the event until the dragged line is drawn, and until the shelf has been painted; and the longest task of the
 * page, when the node is pressed (its panel comes) and over a drag without a pause. The aims are one frame (16.7 ms),
 * 33 ms and 50 ms. The last line is what this machine takes for a page that does nothing else: no drag can be faster.
 */

const MOVES = 30;
const STEP_PX = 2;
const FIRST_PX = 10;

/** A shelf that has not been painted by then is not going to be: a node that moves no part of its own. */
const LATE_MS = 5000;
const NEVER = { lineMs: Number.NaN, shelfMs: Number.NaN };

interface Times {
  readonly lineMs: readonly number[];
  readonly shelfMs: readonly number[];
}

interface Drag {
  readonly what: string;
  readonly at: Place;
}

async function main(): Promise<void> {
  const found = findChromium(say);
  if (!found.ok) return say([...found.tried, CHROMIUM_ADVICE].join("\n"));
  const app = await buildAndServe();
  const browser = await launchChromium(found.path);
  say(
    `${"dragged node".padEnd(34)} ${"line ms".padStart(16)} ${"shelf ms".padStart(16)} ${"longest task".padStart(15)}`,
  );
  say(
    `${"".padEnd(34)} ${"median, 95 %".padStart(16)} ${"median, 95 %".padStart(16)} ${"press, drag".padStart(15)}`,
  );
  for (const drag of drags()) {
    const { page, context } = await visit(browser, app.address);
    say(await measured(page, drag));
    await context.close();
  }
  const { page } = await visit(browser, app.address);
  const [outer] = drags();
  await page.evaluate(freezePage);
  if (outer) say(await measured(page, { ...outer, what: "a page at rest, one line drawn" }));
  await browser.close();
  await app.close();
}

/** A drag in a row of the table. */
async function measured(page: Page, { what, at }: Drag): Promise<string> {
  await page.evaluate(watch);
  const { lineMs, shelfMs } = await dragStepByStep(page, at);
  const { pressMs, dragMs } = await dragWithoutPause(page, at);
  const longest = `${pressMs.toFixed(0)}, ${dragMs.toFixed(0)}`;
  return `${what.padEnd(34)} ${spread(lineMs).padStart(16)} ${spread(shelfMs).padStart(16)} ${longest.padStart(15)}`;
}

/** The node farthest outboard of each section and fence of the demo. */
function drags(): readonly Drag[] {
  return readExample("hill-climb-floor").items.flatMap((item): readonly Drag[] => {
    if (item.kind === "transition" || item.kind === "plate") return [];
    const elements = item.kind === "fence" ? item.line.elements : item.outline.elements;
    const nodes = elements.flatMap((one) => (one.kind === "node" ? [one] : []));
    const outer = nodes.toSorted((a, b) => b.y - a.y)[0];
    return outer ? [{ what: `${item.name}, ${outer.id}`, at: [outer.x, outer.y] }] : [];
  });
}

/** In the page: remembers when the pointer moved, when something was drawn on a canvas, and long tasks. */
function watch(): void {
  const seen = { movedAtMs: 0, drawnAtMs: 0, longestMs: 0 };
  Object.assign(window, { seen });
  addEventListener(
    "pointermove",
    (event) => Object.assign(seen, { movedAtMs: event.timeStamp, drawnAtMs: 0 }),
    true,
  );
  const { prototype } = CanvasRenderingContext2D;
  const stroke = prototype.stroke;
  prototype.stroke = function (this: CanvasRenderingContext2D, path?: Path2D) {
    seen.drawnAtMs ||= performance.now();
    return Reflect.apply(stroke, this, path ? [path] : []);
  };
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.longestMs = Math.max(seen.longestMs, duration);
  }).observe({ type: "longtask" });
}

async function dragStepByStep(page: Page, at: Place): Promise<Times> {
  const [x, y] = await onScreen(page, "plan", at);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.keyboard.down("Alt");
  // Past the few pixels that make a press a drag.
  // Away from the front, where the first profile ends: what leaves its profile is no part any more.
  const sense = at[0] < 0 ? 1 : -1;
  await page.mouse.move(x + sense * FIRST_PX, y);
  await page.waitForTimeout(1000);
  const lineMs: number[] = [];
  const shelfMs: number[] = [];
  for (let move = 1; move <= MOVES; move += 1) {
    const painted = page.evaluate(nextShelf);
    await page.waitForTimeout(20);
    await page.mouse.move(x + sense * (FIRST_PX + move * STEP_PX), y);
    const times = await Promise.race([painted, page.waitForTimeout(LATE_MS).then(() => NEVER)]);
    lineMs.push(times.lineMs);
    shelfMs.push(times.shelfMs);
    await page.waitForTimeout(400);
  }
  await page.mouse.up();
  await page.keyboard.up("Alt");
  await page.keyboard.press("Control+z");
  await page.waitForTimeout(1000);
  return { lineMs, shelfMs };
}

/** In the page: how long after the next move of the pointer a canvas was drawn, and the shelf painted. */
function nextShelf(): Promise<{ readonly lineMs: number; readonly shelfMs: number }> {
  const { seen } = window as unknown as { readonly seen: { movedAtMs: number; drawnAtMs: number } };
  const shelf = document.querySelector("[data-testid=shelf]");
  const before = seen.movedAtMs;
  return new Promise((resolve) => {
    const observer = new MutationObserver(() => {
      if (seen.movedAtMs === before) return;
      observer.disconnect();
      requestAnimationFrame(() => {
        const afterPaint = new MessageChannel();
        afterPaint.port1.onmessage = () =>
          resolve({ lineMs: seen.drawnAtMs - seen.movedAtMs, shelfMs: performance.now() - seen.movedAtMs });
        afterPaint.port2.postMessage("");
      });
    });
    if (shelf)
      observer.observe(shelf, { subtree: true, childList: true, attributes: true, characterData: true });
  });
}

async function dragWithoutPause(
  page: Page,
  at: Place,
): Promise<{ readonly pressMs: number; readonly dragMs: number }> {
  const [x, y] = await onScreen(page, "plan", at);
  await page.evaluate(takeLongest);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.waitForTimeout(500);
  const pressMs = await page.evaluate(takeLongest);
  for (let move = 1; move <= 60; move += 1) {
    await page.mouse.move(x + (at[0] < 0 ? move : -move), y - (move % 7));
    await page.waitForTimeout(16);
  }
  await page.mouse.up();
  await page.waitForTimeout(500);
  return { pressMs, dragMs: await page.evaluate(takeLongest) };
}

/** In the page: the longest task since this was last asked. */
function takeLongest(): number {
  const { seen } = window as unknown as { readonly seen: { longestMs: number } };
  const { longestMs } = seen;
  seen.longestMs = 0;
  return longestMs;
}

function spread(values: readonly number[]): string {
  const sorted = values.filter(Number.isFinite).toSorted((a, b) => a - b);
  const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(0);
  return `${at(0.5)}, ${at(0.95)}`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

await main();
