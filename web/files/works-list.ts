import { readProject, writeProject } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { heldSlots, whileFree } from "./editing-lock.ts";
import { useFiles } from "./file-store.ts";
import type { KeptWork } from "./kept-work.ts";
import { layDown } from "./take-up.ts";
import { forgetWork, keepWork, keptWork, keptWorks } from "./work-database.ts";

/**
 * Reads again what is kept on this device and what is open in other tabs. What could not be written stands in the list
 * too, for as long as this page is open.
 */
export async function refreshWorks(): Promise<void> {
  const [kept, openSlots] = await Promise.all([keptWorks(), heldSlots()]);
  useFiles.setState({ openSlots });
  listWorks(kept);
}

/** Lists works, and before those in the same slots what could not be written. */
export function listWorks(kept: readonly KeptWork[]): void {
  const { unsaved } = useFiles.getState();
  const isUnsaved = ({ slot }: KeptWork) => unsaved.some((work) => work.slot === slot);
  useFiles.setState({
    works: [...unsaved, ...kept.filter((work) => !isUnsaved(work))].sort((a, b) => b.keptAtMs - a.keptAtMs),
  });
}

/** Gives a kept work another name. One that is in hand here is renamed as an edit. */
export async function renameWork(work: KeptWork, title: string): Promise<void> {
  if (isInHand(work)) {
    useDocument.getState().dispatch({ kind: "change-settings", changes: { title } });
    return;
  }
  await changeFree(work, (now) => {
    const read = readProject(now.text);
    if (!read.ok) return now;
    return { ...now, title, text: writeProject({ ...read.project, title }) };
  });
}

/** Deletes a work; until it is deleted for good it can be put back. One that is in hand here is laid down. */
export async function deleteWork(work: KeptWork): Promise<void> {
  if (isInHand(work)) await layDown();
  await changeFree(work, (now) => ({ ...now, deletedAtMs: Date.now() }));
}

/** Puts a deleted work back into the list. */
export async function putBack(work: KeptWork): Promise<void> {
  await changeFree(work, ({ deletedAtMs: _deleted, ...now }) => now);
}

/** Deletes works for good: there is no way back from this. */
export async function deleteForGood(works: readonly KeptWork[]): Promise<void> {
  try {
    for (const { slot } of works) await whileFree(slot, () => forgetWork(slot));
    await refreshWorks();
  } catch {
    useFiles
      .getState()
      .tell({ title: "Nothing was deleted", text: "The device's storage is closed to this page." });
  }
}

/** Forgets examples that were looked at in tabs which are closed by now. */
export async function forgetLookedAt(exceptSlot: string | undefined): Promise<void> {
  const { works, openSlots } = useFiles.getState();
  const left = works.filter(({ slot, isOwn }) => !isOwn && slot !== exceptSlot && !openSlots.has(slot));
  for (const { slot } of left) await whileFree(slot, () => forgetWork(slot));
}

const isInHand = ({ slot }: KeptWork): boolean => slot === useFiles.getState().slot;

/** Changes a work that no tab has open; says so if one has. Reads it afresh, since another tab may have written it. */
async function changeFree(work: KeptWork, change: (now: KeptWork) => KeptWork): Promise<void> {
  const { slot, title } = work;
  try {
    const isDone = await whileFree(slot, async () => {
      const now = await keptWork(slot);
      if (now) await keepWork(change(now));
    });
    if (!isDone) tellOpenElsewhere(title);
    await refreshWorks();
  } catch {
    useFiles.getState().tell({
      title: `${title} stays as it is`,
      text: "The device's storage is full or closed to this page.",
    });
  }
}

function tellOpenElsewhere(title: string): void {
  useFiles.getState().tell({
    title: `${title} stays as it is`,
    text: "It is open in another tab. Close it there first, then try again.",
  });
}
