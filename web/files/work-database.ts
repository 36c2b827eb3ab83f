import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { forgetSnapshotsOf } from "../history/snapshot-database.ts";
import type { KeptWork } from "./kept-work.ts";

interface WorkSchema extends DBSchema {
  works: { key: string; value: KeptWork };
}

/** A work as the first version kept it. */
type FirstWork = Omit<KeptWork, "isOwn" | "picture" | "deletedAtMs">;

let opened: Promise<IDBPDatabase<WorkSchema>> | undefined;

/** The works on this device; an earlier version's are taken over, all as the builder's own. */
function database(): Promise<IDBPDatabase<WorkSchema>> {
  opened ??= open().catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

function open(): Promise<IDBPDatabase<WorkSchema>> {
  return new Promise((resolve, reject) => {
    openDB<WorkSchema>("traywright", 2, {
      upgrade: async (store, before, _after, change) => {
        if (before < 1) store.createObjectStore("works", { keyPath: "slot" });
        if (before !== 1) return;
        const works = change.objectStore("works");
        for (const work of await works.getAll()) await works.put(fromFirst(work));
      },
      blocked: () => reject(new Error("An older page of this program holds the storage.")),
      blocking: (_before, _after, event) => {
        if (event.target instanceof IDBDatabase) event.target.close();
        opened = undefined;
      },
      terminated: () => {
        opened = undefined;
      },
    }).then(resolve, reject);
  });
}

const fromFirst = ({ slot, title, text, keptAtMs }: FirstWork): KeptWork => ({
  slot,
  title,
  text,
  keptAtMs,
  isOwn: true,
});

/** All works kept on this device, deleted ones too, the one kept last first. */
export async function keptWorks(): Promise<readonly KeptWork[]> {
  const works = await (await database()).getAll("works");
  return works.sort((a, b) => b.keptAtMs - a.keptAtMs);
}

/** The work in a slot; undefined where nothing is kept there. */
export async function keptWork(slot: string): Promise<KeptWork | undefined> {
  return (await database()).get("works", slot);
}

/**
 * Keeps a work in its slot, in place of what was there. It is committed without waiting for an answer, so that it is
 * kept even if the page is left at once.
 */
export async function keepWork(work: KeptWork): Promise<void> {
  const change = (await database()).transaction("works", "readwrite");
  const put = change.store.put(work);
  change.commit();
  await Promise.all([put, change.done]);
}

/** Empties a slot for good. */
export async function forgetWork(slot: string): Promise<void> {
  await (await database()).delete("works", slot);
  await forgetSnapshotsOf(slot);
}
