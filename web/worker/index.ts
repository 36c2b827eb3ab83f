export { core, startCore } from "./core-client.ts";
export { latestWins } from "./latest-wins.ts";
