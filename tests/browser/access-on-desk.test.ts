import { it } from "vitest";
import { DESK, expectNoBarriers, LONG_MS } from "./expect-no-barriers.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

it(
  "no screen has a barrier that axe-core finds on a desk, light or dark",
  () => asVisitor(({ page }) => expectNoBarriers(page, DESK)),
  LONG_MS,
);
