import type { Project } from "../../core/project/index.ts";
import { emptyProject, readProject } from "../../core/project/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { type ExampleName, exampleText } from "./examples.ts";
import { useFiles } from "./file-store.ts";
import type { KeptWork } from "./work-database.ts";

/** Puts a project into the builder's hands, in a slot of its own; the work before stays kept in its slot. */
function takeUp(project: Project, slot: string, isEdited: boolean): void {
  useFiles.setState({ slot, isEdited });
  useDocument.getState().replace(project);
  useView.getState().select(undefined);
  useView.getState().requestFit();
}

/** Starts a tray with nothing drawn. */
export function startNew(): void {
  const now = new Date();
  const issuedOn = now.toISOString().slice(0, 10);
  takeUp(
    emptyProject({ id: `tray-${now.getTime().toString(36)}`, title: "New tray", issuedOn }),
    newSlot(),
    false,
  );
  useView.getState().setStage("draw");
}

/** Opens the text of a project file. If it is none, says why and leaves the work in hand as it is. */
export function openText(text: string, fileName: string): void {
  const read = readProject(text);
  if (read.ok) takeUp(read.project, newSlot(), false);
  else useFiles.getState().tell({ title: `${fileName} was not opened`, text: read.message });
}

/** Opens a file that the builder has chosen or dropped on the page. */
export async function openFile(file: File): Promise<void> {
  try {
    openText(await file.text(), file.name);
  } catch {
    useFiles.getState().tell({
      title: `${file.name} was not opened`,
      text: "The device could not read this file. Copy it to this device and try again.",
    });
  }
}

/** Opens one of the trays that come with the program; where it cannot be fetched, the work in hand stays. */
export async function openExample(name: ExampleName): Promise<void> {
  try {
    openText(await exampleText(name), name);
    useView.getState().setStage("draw");
  } catch {
    useFiles.getState().tell({
      title: "The example was not opened",
      text: "It could not be fetched. Go on the network once, and it is kept on this device from then on.",
    });
  }
}

/** Takes a kept work up again in its own slot. Returns whether it could be read. */
export function takeUpKept(work: KeptWork): boolean {
  const read = readProject(work.text);
  if (read.ok) takeUp(read.project, work.slot, work.isEdited);
  else useFiles.getState().tell({ title: `${work.title} was not opened`, text: read.message });
  return read.ok;
}

const newSlot = (): string => `work-${Date.now().toString(36)}`;
