import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

/** One visitor: a fresh profile with nothing stored, its page, and everything that went wrong on it. */
export interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Console errors, uncaught errors and failed requests, as they come. */
  readonly complaints: readonly string[];
}

/** Longest wait for anything, on a machine that has much else to do. */
const SLOW_MACHINE_MS = 60_000;

export const SCREEN = { width: 1440, height: 900 };

const ARGUMENTS = ["--no-sandbox", "--disable-background-networking"];

/** For what is drawn in 3D: the work of a graphics card done by the processor, which slows everything else. */
const IN_SPACE = [
  "--use-gl=angle",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--disable-gpu-rasterization",
];
const ON_PAPER = ["--disable-gpu"];

/** What a browser is started for: the board and the pages alone, or 3D too. */
export type Drawing = "on paper" | "in space";

/** Starts Chromium without a window; without a graphics card in either case, and in space only where 3D is drawn. */
export const launchChromium = (executablePath: string, draws: Drawing = "on paper"): Promise<Browser> =>
  chromium.launch({
    executablePath,
    headless: true,
    args: [...ARGUMENTS, ...(draws === "in space" ? IN_SPACE : ON_PAPER)],
  });

/** Opens the app as a first visitor would, goes on to the demo, and waits until its tray is computed. */
export async function visit(browser: Browser, address: string): Promise<Visit> {
  const visitor = await visitStartPage(browser, address);
  await visitor.page.getByTestId("start-demo").click();
  await visitor.page.getByTestId("shelf-part").first().waitFor();
  await visitor.page.getByTestId("truth-parts").waitFor();
  return visitor;
}

/** Opens the app as a first visitor would, and begins with an empty sheet. */
export async function visitEmptySheet(browser: Browser, address: string): Promise<Visit> {
  const visitor = await visitStartPage(browser, address);
  await visitor.page.getByTestId("start-new").click();
  await visitor.page.getByTestId("truth-parts").waitFor();
  return visitor;
}

/** Opens the app as a first visitor would; `prepare` is run before the page is. */
export async function visitStartPage(
  browser: Browser,
  address: string,
  prepare: (context: BrowserContext) => Promise<unknown> = async () => {},
): Promise<Visit> {
  const context = await browser.newContext({
    viewport: SCREEN,
    acceptDownloads: true,
    reducedMotion: "reduce",
  });
  context.setDefaultTimeout(SLOW_MACHINE_MS);
  await prepare(context);
  const page = await context.newPage();
  const complaints = listenForComplaints(page);
  await page.goto(address);
  await page.getByTestId("start-page").waitFor();
  return { context, page, complaints };
}

/** Collects what a page complains about; a list that grows. */
export function listenForComplaints(page: Page): readonly string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => complaints.push(`uncaught: ${error.message}`));
  page.on("requestfailed", (request) =>
    complaints.push(`request failed: ${request.url()} ${request.failure()?.errorText ?? ""}`),
  );
  return complaints;
}
