import { type Project, writeProject } from "../../core/project/index.ts";
import { trayPicture } from "../drawings/index.ts";
import { type DocumentStore, useDocument } from "../stores/index.ts";
import { useFiles } from "./file-store.ts";
import type { KeptWork } from "./kept-work.ts";
import { tellNotKept } from "./tell-not-kept.ts";
import { forgetWork, keepWork } from "./work-database.ts";
import { listWorks, refreshWorks } from "./works-list.ts";

/** A change is written at once; what follows it sooner than this gathers until then. */
const GATHER_MS = 250;
/** How long until what could not be written is tried again. */
const AGAIN_MS = 5000;

/** A document on its way into its slot. */
interface Waiting {
  readonly slot: string;
  readonly project: Project;
  readonly isOwn: boolean;
}

/**
 * Keeps every finished change on this device from now on. What a gesture is still doing is not written, so that a
 * reload in the middle of it finds the work as it was before.
 */
export function keepChanges(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waiting: Waiting | undefined;
  let seen = useDocument.getState();

  const writeNow = () => {
    clearTimeout(timer);
    timer = undefined;
    if (waiting === undefined) return;
    void write(workOf(waiting));
    waiting = undefined;
    timer = setTimeout(writeNow, GATHER_MS);
  };
  const keep = (next: Waiting | undefined) => {
    waiting = next;
    if (timer === undefined) writeNow();
  };
  useDocument.subscribe((state) => {
    if (state.history.gesture !== undefined || state.project === seen.project) return;
    const isEdit = state.generation === seen.generation;
    seen = state;
    if (!isToBeKept(isEdit)) return;
    if (isEdit) useFiles.setState({ isOwn: true });
    keep(waitingNow(state));
  });
  useFiles.subscribe((state, before) => {
    if (state.slot === before.slot) {
      // Taken into the builder's own hands without an edit, as by a snapshot of it.
      if (state.isOwn && !before.isOwn) keep(waitingNow(useDocument.getState()));
      return;
    }
    if (before.isOwn) writeNow();
    waiting = undefined;
    if (before.slot !== undefined && !before.isOwn) void forgetWork(before.slot).catch(() => undefined);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") writeNow();
  });
  window.addEventListener("pagehide", writeNow);
  window.addEventListener("beforeunload", (event) => {
    if (isAnythingLost()) event.preventDefault();
  });
}

/** An edit is; so is a work that was never kept before. One that was just taken up from its slot is there already. */
function isToBeKept(isEdit: boolean): boolean {
  const { slot, works } = useFiles.getState();
  return slot !== undefined && (isEdit || !works.some((work) => work.slot === slot));
}

function waitingNow({ project }: DocumentStore): Waiting | undefined {
  const { slot, isOwn } = useFiles.getState();
  return slot === undefined ? undefined : { slot, project, isOwn };
}

const workOf = ({ slot, project, isOwn }: Waiting): KeptWork => ({
  slot,
  title: project.title,
  text: writeProject(project),
  keptAtMs: Date.now(),
  isOwn,
  picture: trayPicture(project),
});

/** What was last to be written into each slot. */
const newest = new Map<string, KeptWork>();

/**
 * Writes a work into its slot; where that fails it stays in the list of this page and is tried again. What becomes of
 * a work that a newer one has followed into its slot says nothing any more.
 */
async function write(work: KeptWork): Promise<void> {
  newest.set(work.slot, work);
  const isNewest = () => newest.get(work.slot) === work;
  try {
    await keepWork(work);
    if (isNewest()) setUnsaved(work.slot, undefined);
    if (work.isOwn) askToKeepStorage();
    await refreshWorks();
  } catch (error) {
    if (!isNewest()) return;
    setUnsaved(work.slot, work);
    tellNotKept(error, work.isOwn);
    setTimeout(() => tryAgain(work), AGAIN_MS);
  }
}

/** Unless something newer of it has been written, or has failed, meanwhile. */
function tryAgain(work: KeptWork): void {
  if (useFiles.getState().unsaved.includes(work)) void write(work);
}

function setUnsaved(slot: string, work: KeptWork | undefined): void {
  const { unsaved, works } = useFiles.getState();
  const others = unsaved.filter((other) => other.slot !== slot);
  useFiles.setState({ unsaved: work ? [...others, work] : others });
  if (work) listWorks(works);
  else if (others.length === 0) useFiles.setState({ keeping: "kept", hasToldNotKept: false });
}

/** Whether closing the page loses anything that no file holds either. */
function isAnythingLost(): boolean {
  const { unsaved, inFile } = useFiles.getState();
  return unsaved.some((work) => work.isOwn && (inFile === undefined || work.text !== writeProject(inFile)));
}

let hasAsked = false;

/** Asks the browser once not to clear this page's storage of its own accord; what it answers changes nothing here. */
function askToKeepStorage(): void {
  if (hasAsked) return;
  hasAsked = true;
  void navigator.storage?.persist?.().catch(() => undefined);
}
