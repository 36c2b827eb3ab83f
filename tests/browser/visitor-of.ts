import { mkdirSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject } from "vitest";
import { type Drawing, launchChromium, type Visit, visit } from "./launch.ts";

const FAILURES = "out/browser-failures";

/**
 * One Chromium for a test file. What comes back runs a piece of work as a first visitor, in a fresh profile, before
 * the demo's tray or wherever else `begin`, or `beginHere` for this once, leads, and then expects that the page complained of nothing. A failure leaves a picture in `out/browser-failures`.
 */
export function visitorOf(
  begin: (browser: Browser, address: string) => Promise<Visit> = visit,
  draws: Drawing = "on paper",
): (work: (visit: Visit) => Promise<void>, beginHere?: typeof begin) => Promise<void> {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await launchChromium(inject("chromiumPath"), draws);
  });
  afterAll(() => browser?.close());
  return async (work, beginHere = begin) => {
    if (!browser) throw new Error("Chromium is not running.");
    const visitor = await beginHere(browser, inject("address"));
    try {
      await work(visitor);
      expect(visitor.complaints).toEqual([]);
    } catch (error) {
      await takePicture(visitor);
      throw error;
    } finally {
      await visitor.context.close();
    }
  };
}

async function takePicture({ page, complaints }: Visit): Promise<void> {
  mkdirSync(FAILURES, { recursive: true });
  const name = (expect.getState().currentTestName ?? "test").replaceAll(/[^a-z0-9]+/gi, "-").slice(0, 80);
  await page.screenshot({ path: `${FAILURES}/${name}.png` }).catch(() => undefined);
  for (const complaint of complaints) process.stdout.write(`  ${complaint}\n`);
}
