import type { Page } from "playwright-core";

/** One screen of the program: its name, and how a visitor comes to it from anywhere. */
export interface Screen {
  readonly name: string;
  readonly open: (page: Page) => Promise<void>;
  /** Its layout follows the width no further than another screen's: looked at on a desk only. */
  readonly onDeskOnly?: true;
  /** Leaves what was opened over the work. */
  readonly leave?: (page: Page) => Promise<void>;
}

/** Every screen of the demo tray, in the order of the work. */
export const screens: readonly Screen[] = [
  { name: "Draw, nothing chosen", open: (page) => drawWith(page, undefined) },
  { name: "Draw, a section chosen", open: (page) => drawWith(page, "s2") },
  { name: "Draw, a fence chosen", onDeskOnly: true, open: (page) => drawWith(page, "f2") },
  { name: "Draw, a transition chosen", open: (page) => drawWith(page, "t2") },
  { name: "Draw, a plate chosen", onDeskOnly: true, open: (page) => drawWith(page, "p1") },
  { name: "Draw, an opening chosen", onDeskOnly: true, open: (page) => drawWith(page, "o1") },
  {
    name: "Draw, a node chosen",
    open: async (page) => {
      await drawWith(page, "s2");
      await page.getByTestId("chosen-panel").locator(".node-name").first().click();
    },
  },
  {
    name: "Draw, a section begun",
    open: async (page) => {
      await drawWith(page, undefined);
      await showOnPhone(page, "drawing");
      await page.getByTestId("tool-section").click();
    },
    leave: async (page) => {
      await page.getByTestId("leave-off").click();
      await page.getByTestId("tool-select").click();
    },
  },
  {
    name: "Draw, the tray in 3D",
    open: async (page) => {
      await drawWith(page, undefined);
      await showOnPhone(page, "parts");
      await page.getByTestId("show-3d").click();
      await page.getByTestId("look-picture").waitFor();
    },
    leave: (page) => page.getByTestId("show-flat").click(),
  },
  ...["sheets", "stock", "jig", "glue", "skin", "buy", "print"].map((stage) => ({
    name: stage,
    open: async (page: Page) => {
      await page.getByTestId(`stage-${stage}`).click();
      await page.getByTestId(`stage-view-${stage}`).waitFor();
    },
  })),
  {
    name: "the menu",
    open: async (page) => {
      await drawWith(page, undefined);
      await showOnPhone(page, "drawing");
      await page.getByTestId("menu").click();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "a word explained",
    open: async (page) => {
      await drawWith(page, "s2");
      await page.getByTestId("chosen-panel").getByTestId("help-section").click();
      await page.getByTestId("help-card").waitFor();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "the menu of a place",
    open: async (page) => {
      await drawWith(page, "s2");
      await showOnPhone(page, "drawing");
      await page.getByTestId("drawing").focus();
      await page.keyboard.press("Shift+F10");
      await page.getByTestId("place-menu").waitFor();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "the drawing in words",
    open: async (page) => {
      await page.getByTestId("drawing").focus();
      await page.keyboard.press("w");
      await page.getByTestId("described").waitFor();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  ...["marks", "ribs", "glue"].map((chapter) => ({
    name: `bench mode, ${chapter}`,
    open: async (page: Page) => {
      await page.getByTestId("deed-bench").click();
      await page.getByTestId(`bench-${chapter}`).click();
    },
    leave: (page: Page) => page.getByTestId("bench-leave").click(),
  })),
  {
    name: "the list of what can be done",
    open: (page) => page.getByTestId("deed-deeds").click(),
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "the list of steps",
    open: (page) => page.getByTestId("deed-steps").click(),
    leave: (page) => page.getByTestId("deed-steps").click(),
  },
  {
    name: "the list of keys",
    open: async (page) => {
      await page.getByTestId("drawing").focus();
      await page.keyboard.press("?");
      await page.getByTestId("key-list").waitFor();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "the start page",
    open: async (page) => {
      await page.getByTestId("menu").click();
      await page.getByTestId("menu-start").click();
      await page.getByTestId("make-starter").waitFor();
    },
    leave: (page) => page.getByTestId("start-back").click(),
  },
  {
    name: "importing a line",
    open: async (page) => {
      await page.keyboard.press("Control+i");
      await page.getByTestId("import-text").fill("x,y\n0,0\n600,0\n600,300\n12,4,7\n");
      await page.getByTestId("import-remarks").waitFor();
    },
    leave: (page) => page.keyboard.press("Escape"),
  },
  {
    name: "guided practice",
    open: async (page) => {
      await page.getByTestId("menu").click();
      await page.getByTestId("menu-guide").click();
      await page.getByTestId("guide").waitFor();
    },
    leave: async (page) => {
      await page.getByTestId("guide-leave").click();
      await page.getByTestId("menu").click();
      await page.getByTestId("menu-demo").click();
      await page.getByTestId("guide").waitFor({ state: "detached" });
      await page.getByTestId("choose-s2").first().waitFor({ state: "attached" });
    },
  },
];

/** The board with one thing chosen, or nothing; on a phone the view of what is chosen. */
async function drawWith(page: Page, id: string | undefined): Promise<void> {
  await page.getByTestId("stage-draw").click();
  await showOnPhone(page, "drawing");
  await page.getByTestId("drawing").focus();
  for (const _ of [1, 2]) await page.keyboard.press("Escape");
  await showOnPhone(page, "chosen");
  if (id !== undefined) await page.getByTestId(`choose-${id}`).first().click();
}

/** On a phone one view of the board at a time is shown. */
async function showOnPhone(page: Page, view: string): Promise<void> {
  const word = page.getByTestId(`phone-view-${view}`);
  if (await word.isVisible()) await word.click();
}
