import { mkdirSync } from "node:fs";
import { CHROMIUM_ADVICE, findChromium } from "./find-chromium.ts";
import { launchChromium, visit } from "./launch.ts";
import { buildAndServe } from "./serve-app.ts";

/** Renews the pictures of the README from the built app: `npx tsx tests/browser/take-screenshots.ts`. */

const FOLDER = "web/pictures";

async function main(): Promise<void> {
  const chromium = findChromium((line) => process.stdout.write(`${line}\n`));
  if (!chromium.ok) throw new Error([...chromium.tried, CHROMIUM_ADVICE].join("\n"));
  const app = await buildAndServe();
  const browser = await launchChromium(chromium.path, "in space");
  const { page } = await visit(browser, app.address);
  mkdirSync(FOLDER, { recursive: true });
  await page.screenshot({ path: `${FOLDER}/board.png` });
  process.stdout.write(`${FOLDER}/board.png\n`);
  await browser.close();
  await app.close();
}

await main();
