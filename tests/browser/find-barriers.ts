import { createRequire } from "node:module";
import type axe from "axe-core";
import type { Page } from "playwright-core";

/** What the rules are run for: WCAG 2.0, 2.1 and 2.2 at levels A and AA, and axe's own best practice. */
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

const AXE_PATH = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

declare global {
  interface Window {
    readonly axe: typeof axe;
  }
}

/** Makes axe-core ready on the page as it is now; a reload forgets it. */
export const bringAxe = async (page: Page): Promise<void> => {
  await page.addScriptTag({ path: AXE_PATH });
};

/** What axe-core finds on the page, one line a thing: rule, place, and what is wrong. */
export function findBarriers(page: Page, rules: "all" | "colours only"): Promise<readonly string[]> {
  return page.evaluate(
    async ({ tags, isColoursOnly }) => {
      // While the list of steps fills a phone the stage is not shown, and with it the main landmark.
      const rules = { "landmark-one-main": { enabled: false } };
      const runOnly = isColoursOnly
        ? { type: "rule" as const, values: ["color-contrast"] }
        : { type: "tag" as const, values: tags };
      // Pages of paper are pictures: each has one label, and what is on it is read on paper.
      const found = await window.axe.run(
        { exclude: [[".page-picture"]] },
        { runOnly, rules, preload: false, resultTypes: ["violations"] },
      );
      // Numbers and grips on the drawing, however small or covered, stand in a table as well (WCAG 2.5.8, equivalent).
      const isOnDrawing = (selector: string) => /dimension-|grip/.test(selector);
      return found.violations.flatMap(({ id, help, nodes }) =>
        nodes.flatMap(({ target, any, all, none }) => {
          if (id === "target-size" && isOnDrawing(target.join(" "))) return [];
          const why = [...any, ...all, ...none].map(({ message }) => message).join("; ");
          return [`${id} at ${target.join(" ")}: ${help} (${why})`];
        }),
      );
    },
    { tags: TAGS, isColoursOnly: rules === "colours only" },
  );
}
