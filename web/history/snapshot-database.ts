import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** A tray as it was at a moment the builder chose, as it is kept on this device. */
export interface Snapshot {
  readonly id: string;
  /** The place where the work is kept that it was taken of. */
  readonly slot: string;
  readonly name: string;
  readonly takenAtMs: number;
  /** The project file's own text. */
  readonly text: string;
}

interface SnapshotSchema extends DBSchema {
  snapshots: { key: string; value: Snapshot; indexes: { slot: string } };
}

let opened: Promise<IDBPDatabase<SnapshotSchema>> | undefined;

async function database(): Promise<IDBPDatabase<SnapshotSchema>> {
  opened ??= openDB<SnapshotSchema>("traywright-snapshots", 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore("snapshots", { keyPath: "id" }).createIndex("slot", "slot");
    },
  });
  try {
    return await opened;
  } catch (error) {
    opened = undefined;
    throw error;
  }
}

/** The snapshots of one work, in no order. */
export const keptSnapshots = async (slot: string): Promise<readonly Snapshot[]> =>
  (await database()).getAllFromIndex("snapshots", "slot", slot);

/** Keeps a snapshot on this device; one with the same id gives way to it. */
export async function keepSnapshot(snapshot: Snapshot): Promise<void> {
  await (await database()).put("snapshots", snapshot);
}

/** Takes a snapshot off this device. */
export async function forgetSnapshot(id: string): Promise<void> {
  await (await database()).delete("snapshots", id);
}

/** Takes all snapshots of a work off this device, when the work itself goes. */
export async function forgetSnapshotsOf(slot: string): Promise<void> {
  for (const { id } of await keptSnapshots(slot)) await forgetSnapshot(id);
}
