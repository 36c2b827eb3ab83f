export { core, designCore, startCore } from "./core-client.ts";
export type { PagesAhead, PaperKind, ToBuy } from "./core-worker.ts";
export { latestWins } from "./latest-wins.ts";
export type { FoundLayout } from "./lay-stock.ts";
