import { writeProject } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { holdWork } from "./editing-lock.ts";
import { useFiles } from "./file-store.ts";
import { openExample, takeUpKept } from "./open-work.ts";
import { type KeptWork, keepWork, keptWorks } from "./work-database.ts";

/** How long changes gather before they are written: a drag is written once, not a hundred times. */
const GATHER_MS = 250;

/**
 * Takes up the work that was in hand when the page was last open, or the demo on the very first start, and from
 * then on keeps every change on this device. Only one tab does; another one looks on until that one is closed.
 */
export async function takeUpLastWork(): Promise<void> {
  try {
    await openLast();
  } catch {
    useFiles.getState().tell({
      title: "Your work is not kept on this device",
      text: "The browser gives this page no storage. Save the tray as a file before you close it.",
    });
    await openExample("hill-climb-floor");
  }
  holdWork({
    onHeldElsewhere: () => useDocument.getState().setReadOnly(true),
    onHeldLater: async () => {
      await openLast();
      useDocument.getState().setReadOnly(false);
    },
  });
  keepChanges();
}

async function openLast(): Promise<void> {
  const [last, ...earlier] = await keptWorks();
  useFiles.setState({ earlier });
  if (last === undefined || !takeUpKept(last)) await openExample("hill-climb-floor");
}

function keepChanges(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const keepNow = () => {
    clearTimeout(timer);
    timer = undefined;
    if (!useDocument.getState().isReadOnly) void keep();
  };
  useDocument.subscribe((state, before) => {
    if (state.project === before.project) return;
    if (state.generation === before.generation) useFiles.setState({ isEdited: true });
    clearTimeout(timer);
    timer = setTimeout(keepNow, GATHER_MS);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden" && timer !== undefined) keepNow();
  });
  window.addEventListener("pagehide", () => {
    if (timer !== undefined) keepNow();
  });
  keepNow();
}

async function keep(): Promise<void> {
  const { slot, isEdited } = useFiles.getState();
  const { project } = useDocument.getState();
  const work: KeptWork = {
    slot,
    title: project.title,
    text: writeProject(project),
    keptAtMs: Date.now(),
    isEdited,
  };
  try {
    await keepWork(work);
    useFiles.setState({ earlier: (await keptWorks()).filter((other) => other.slot !== slot) });
  } catch {
    useFiles.getState().tell({
      title: "The last change was not kept on this device",
      text: "The device's storage is full or closed to this page. Save the tray as a file now.",
    });
  }
}
