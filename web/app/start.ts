import { followDocument } from "../stores/index.ts";
import { startCore } from "../worker/core-client.ts";
import { listenToKeys } from "./keys.ts";
import { followLight } from "./light.ts";
import { keepProgramOnDevice } from "./offline.ts";

/** Everything that runs beside the page: the light, the keys, the core, and the copy for work without a network. */
export function start(): void {
  followLight();
  listenToKeys();
  followDocument(startCore().core.design);
  keepProgramOnDevice();
}
