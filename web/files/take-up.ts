import { type Project, readProject } from "../../core/project/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { holdSlot } from "./editing-lock.ts";
import { useFiles } from "./file-store.ts";
import type { KeptWork } from "./kept-work.ts";
import { rememberSlot } from "./tab-slot.ts";
import { keptWork } from "./work-database.ts";

let letGo = async () => {};

/**
 * Puts a new work into the builder's hands, in a slot of its own that no other tab can know; the work before stays kept
 * in its slot.
 */
export function takeUpNew(project: Project, isOwn: boolean): void {
  takeUp(project, newSlot(), isOwn);
  setHold("mine");
}

/** Takes a kept work up again in its own slot. Returns whether it could be read. */
export function takeUpKept(work: KeptWork): boolean {
  const { slot, hold, tell } = useFiles.getState();
  if (work.slot === slot && hold === "mine") {
    useFiles.setState({ place: "work" });
    return true;
  }
  const read = readProject(work.text);
  if (read.ok) takeUp(read.project, work.slot, work.isOwn);
  else tell({ title: `${work.title} was not opened`, text: read.message });
  return read.ok;
}

/** Shows the start page; the work in hand stays in hand. */
export const showStartPage = (): void => useFiles.setState({ place: "start" });

/** Leaves the start page for the work in hand. */
export const goBackToWork = (): void => useFiles.setState({ place: "work" });

/** Lays the work in hand down: nothing is in hand, and another tab may take it up. */
export async function layDown(): Promise<void> {
  const letGoOf = letGo;
  letGo = async () => {};
  rememberSlot(undefined);
  useFiles.setState({ place: "start", slot: undefined, hold: "mine", isOwn: false });
  await letGoOf();
}

/** Only the tab that holds the work can change it; until that is known it can be looked at. */
function takeUp(project: Project, slot: string, isOwn: boolean): void {
  void letGo();
  useFiles.setState({ place: "work", slot, isOwn, hold: "asking" });
  rememberSlot(slot);
  show(project);
  useDocument.getState().setReadOnly(true);
  letGo = holdSlot(slot, {
    onMine: () => setHold("mine"),
    onElsewhere: () => setHold("elsewhere"),
    onLetGo: async () => {
      await readAgain(slot);
      setHold("mine");
    },
  });
}

function setHold(hold: "mine" | "elsewhere"): void {
  useFiles.setState({ hold });
  useDocument.getState().setReadOnly(hold !== "mine");
}

/** What the other tab has made of the work meanwhile. */
async function readAgain(slot: string): Promise<void> {
  const work = await keptWork(slot).catch(() => undefined);
  const read = work && readProject(work.text);
  if (read?.ok && useFiles.getState().slot === slot) show(read.project);
}

function show(project: Project): void {
  useDocument.getState().replace(project);
  useView.getState().select(undefined);
  useView.getState().requestFit();
}

let count = 0;

/** A slot that no other tab of this device makes in the same moment. */
function newSlot(): string {
  count += 1;
  const chance = Math.random().toString(36).slice(2, 8);
  return `work-${Date.now().toString(36)}-${count}${chance}`;
}
