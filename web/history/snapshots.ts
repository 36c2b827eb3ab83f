import { readProject, writeProject } from "../../core/project/index.ts";
import { useFiles } from "../files/index.ts";
import { useDocument } from "../stores/index.ts";
import { useHistoryView } from "./history-view.ts";
import { forgetSnapshot, keepSnapshot, keptSnapshots, type Snapshot } from "./snapshot-database.ts";
import { type HeldSnapshot, snapshotsOf, useSnapshots } from "./snapshot-store.ts";

const MOST_LETTERS = 60;

/** Takes up the snapshots of a work that are kept on this device. */
export async function loadSnapshots(slot: string): Promise<void> {
  try {
    const kept = await keptSnapshots(slot);
    const ids = new Set(kept.map(({ id }) => id));
    useSnapshots.setState(({ held }) => ({
      held: [
        ...held.filter((other) => !ids.has(other.id)),
        ...kept.map((snapshot) => ({ ...snapshot, isKept: true })),
      ],
    }));
  } catch (error) {
    useSnapshots.setState({ message: wordTrouble(error) });
  }
}

/** Takes a snapshot of the tray as it is now, and lets its name be written. Nothing in a tab that only looks on, or with no tray in hand. */
export async function takeSnapshot(): Promise<void> {
  const { project, isReadOnly } = useDocument.getState();
  const { slot } = useFiles.getState();
  if (isReadOnly || slot === undefined) return;
  useHistoryView.getState().show(true);
  await loadSnapshots(slot);
  const takenAtMs = Date.now();
  const taken: Snapshot = {
    id: `snapshot-${takenAtMs.toString(36)}-${Math.random().toString(36).slice(2, 8)}`,
    slot,
    name: nextName(snapshotsOf(useSnapshots.getState().held, slot)),
    takenAtMs,
    text: writeProject(project),
  };
  useSnapshots.setState({ namingId: taken.id, message: undefined });
  // An example that was only looked at is forgotten; one that a snapshot was taken of is the builder's.
  useFiles.setState({ isOwn: true });
  await keep(taken);
}

/** `Snapshot 3`, after the highest number that is taken. */
export function nextName(snapshots: readonly Pick<Snapshot, "name">[]): string {
  const numbers = snapshots.map(({ name }) => Number(/^Snapshot (\d+)$/.exec(name)?.[1] ?? 0));
  return `Snapshot ${Math.max(0, ...numbers) + 1}`;
}

/** Gives a snapshot another name; an empty one leaves it as it was. */
export async function renameSnapshot(snapshot: Snapshot, typed: string): Promise<void> {
  useSnapshots.setState({ namingId: undefined });
  const name = typed.trim().slice(0, MOST_LETTERS);
  if (name !== "" && name !== snapshot.name) await keep({ ...snapshot, name });
}

/** Deletes a snapshot; until the next is deleted it can be put back. */
export async function deleteSnapshot(snapshot: HeldSnapshot): Promise<void> {
  useSnapshots.setState(({ held }) => ({
    held: held.filter(({ id }) => id !== snapshot.id),
    deleted: snapshot,
    message: undefined,
  }));
  try {
    await forgetSnapshot(snapshot.id);
  } catch (error) {
    if (snapshot.isKept) useSnapshots.setState({ message: wordTrouble(error) });
  }
}

/** Puts the snapshot back that was deleted last. */
export async function putBackDeleted(): Promise<void> {
  const { deleted } = useSnapshots.getState();
  useSnapshots.setState({ deleted: undefined });
  if (deleted) await keep(deleted);
}

/** Makes the tray what it was in a snapshot: one step, which can be taken back. */
export function goBackTo(snapshot: Snapshot): void {
  useSnapshots.setState({ message: goneBackTo(snapshot) });
}

/** Goes back where there is anything to go back to, and says what came of it. */
function goneBackTo({ name, text }: Snapshot): string {
  const { project, become } = useDocument.getState();
  if (writeProject(project) === text) return `The tray is as in ${name} already.`;
  const read = readProject(text);
  if (!read.ok) return `${name} could not be read, and the tray is as it was. ${read.message}`;
  become(read.project, `Go back to ${name}`);
  return `The tray is as in ${name} again. Undo takes that back.`;
}

/** Holds a snapshot, and keeps it on the device where that is granted. */
async function keep({ id, slot, name, takenAtMs, text }: Snapshot): Promise<void> {
  const snapshot: Snapshot = { id, slot, name, takenAtMs, text };
  hold({ ...snapshot, isKept: true });
  try {
    await keepSnapshot(snapshot);
  } catch (error) {
    hold({ ...snapshot, isKept: false });
    useSnapshots.setState({ message: wordTrouble(error) });
  }
}

const hold = (snapshot: HeldSnapshot): void =>
  useSnapshots.setState(({ held }) => ({
    held: [...held.filter(({ id }) => id !== snapshot.id), snapshot],
  }));

/** What it means that the device keeps no snapshot, and what to do. */
function wordTrouble(error: unknown): string {
  const isFull = error instanceof Error && error.name === "QuotaExceededError";
  return isFull
    ? "The device's storage is full: what is marked here lasts only until this page is closed. Delete snapshots that you no longer need, or save the tray as a file."
    : "The browser keeps nothing for this page: snapshots last only until it is closed. Save the tray as a file to keep it.";
}
