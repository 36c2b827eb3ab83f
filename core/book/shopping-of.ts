import { type Need, paperNeed, type ShoppingList, shoppingList } from "../shopping/index.ts";
import type { Design } from "./design.ts";
import { HEADING_MM } from "./page-window.ts";
import type { PaperWork } from "./paper-work.ts";
import type { TemplatePlan } from "./plan-templates.ts";

/** What is to be bought for a design, paper for its templates included. */
export const shoppingOf = (design: Design, work: PaperWork): ShoppingList =>
  shoppingList(design, paperNeeds(design, work));

/** The paper that the templates of a design take; none where there are none. */
export const paperNeeds = ({ project }: Design, { templates: { plan } }: PaperWork): readonly Need[] =>
  plan ? [paperNeed(project, plan.pageCount, rollMm(plan))] : [];

/** What comes off a plotter roll for all pages of the templates, mm. */
const rollMm = ({ layouts, window: { marginMm, correctionY } }: TemplatePlan): number =>
  layouts.reduce(
    (sum, { tiles, windowHeightMm }) =>
      sum + tiles.length * (windowHeightMm * correctionY + HEADING_MM + 2 * marginMm),
    0,
  );
