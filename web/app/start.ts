import { listenToKeys } from "../deeds/index.ts";
import { beginWithFiles, listenToDrops } from "../files/index.ts";
import { followDocument } from "../stores/index.ts";
import { designCore } from "../worker/index.ts";
import { followLight } from "./light.ts";
import { keepProgramOnDevice } from "./offline.ts";

/** Takes up the work of this tab, then runs everything that goes on beside the page: keys, files, the core. */
export async function start(): Promise<void> {
  followLight();
  await beginWithFiles();
  listenToKeys();
  listenToDrops();
  followDocument(designCore());
  keepProgramOnDevice();
}
