import { it } from "vitest";
import { expectNoBarriers, LONG_MS, TABLET } from "./expect-no-barriers.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

it(
  "no screen has a barrier that axe-core finds on a tablet, light or dark",
  () => asVisitor(({ page }) => expectNoBarriers(page, TABLET)),
  LONG_MS,
);
