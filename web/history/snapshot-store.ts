import { create } from "zustand";
import type { Snapshot } from "./snapshot-database.ts";

/** A snapshot in hand; one that the device would not keep lasts until the page is closed. */
export interface HeldSnapshot extends Snapshot {
  readonly isKept: boolean;
}

/** The snapshots of every work that was in hand since the page was opened, and what is to be said of them. */
export interface SnapshotStore {
  readonly held: readonly HeldSnapshot[];
  /** The snapshot whose name is being written. */
  readonly namingId: string | undefined;
  /** The one deleted last, which can be put back. */
  readonly deleted: HeldSnapshot | undefined;
  /** What went wrong or was done last, in one or two sentences. */
  readonly message: string | undefined;
}

export const useSnapshots = create<SnapshotStore>()(() => ({
  held: [],
  namingId: undefined,
  deleted: undefined,
  message: undefined,
}));

/** The snapshots of one work, the one taken last first. */
export const snapshotsOf = (
  held: readonly HeldSnapshot[],
  slot: string | undefined,
): readonly HeldSnapshot[] =>
  held.filter((snapshot) => snapshot.slot === slot).sort((a, b) => b.takenAtMs - a.takenAtMs);
