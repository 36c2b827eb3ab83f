import { it } from "vitest";
import { expectNoBarriers, LONG_MS, PHONE } from "./expect-no-barriers.ts";
import { visitorOf } from "./visitor-of.ts";

const asVisitor = visitorOf();

it(
  "no screen has a barrier that axe-core finds on a phone, light or dark",
  () => asVisitor(({ page }) => expectNoBarriers(page, PHONE)),
  LONG_MS,
);
