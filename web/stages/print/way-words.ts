import type { TemplateWay } from "../../../core/project/index.ts";

/** How a part is marked out, as the screen says it. */
export const WAY_WORDS: Readonly<Record<TemplateWay, string>> = {
  full: "whole template",
  curves: "curves and corners",
  table: "table only",
};
