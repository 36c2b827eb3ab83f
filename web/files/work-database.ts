import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** One tray as it is kept on this device. */
export interface KeptWork {
  /** Names the place it is kept in, not the project: two copies of one file are two works. */
  readonly slot: string;
  readonly title: string;
  /** The project file's own text. */
  readonly text: string;
  readonly keptAtMs: number;
  /** Whether the builder has changed anything in it. */
  readonly isEdited: boolean;
}

interface WorkSchema extends DBSchema {
  works: { key: string; value: KeptWork };
}

/** How many works are kept besides the one in hand. */
const MOST_EARLIER = 12;

let opened: Promise<IDBPDatabase<WorkSchema>> | undefined;

function database(): Promise<IDBPDatabase<WorkSchema>> {
  opened ??= openDB<WorkSchema>("traywright", 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("works", { keyPath: "slot" });
    },
  });
  return opened;
}

/** All works kept on this device, the one kept last first. */
export async function keptWorks(): Promise<readonly KeptWork[]> {
  const works = await (await database()).getAll("works");
  return works.sort((a, b) => b.keptAtMs - a.keptAtMs);
}

/** Keeps a work in its slot, and forgets others that were never edited or are too many. */
export async function keepWork(work: KeptWork): Promise<void> {
  const store = await database();
  await store.put("works", work);
  const others = (await keptWorks()).filter((other) => other.slot !== work.slot);
  const forgotten = others.filter((other, index) => !other.isEdited || index >= MOST_EARLIER);
  for (const { slot } of forgotten) await store.delete("works", slot);
}
