import { emptyProject, readProject } from "../../core/project/index.ts";
import type { Starter, TypedNumbers } from "../../core/starters/index.ts";
import { useView } from "../stores/index.ts";
import { type ExampleName, exampleText } from "./examples.ts";
import { useFiles } from "./file-store.ts";
import { takeUpNew } from "./take-up.ts";

/** Starts a tray with nothing drawn. */
export function startNew(): void {
  takeUpNew(emptyProject({ ...freshStart(), title: "New tray" }), false);
  useView.getState().setStage("draw");
}

/** Makes the tray of a starter from its numbers. Does nothing where a number is out of its range. */
export function makeFromStarter(starter: Starter, typed: TypedNumbers): void {
  const made = starter.make(typed, freshStart());
  if (!made.ok) return;
  takeUpNew(made.value, true);
  useView.getState().setStage("draw");
}

/** Opens the text of a project file. If it is none, says why and leaves the work in hand as it is. */
export function openText(text: string, fileName: string): void {
  const read = readProject(text);
  if (read.ok) takeUpNew(read.project, true);
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
    const read = readProject(await exampleText(name));
    if (!read.ok) throw new Error(read.message);
    takeUpNew(read.project, false);
    useView.getState().setStage("draw");
  } catch {
    useFiles.getState().tell({
      title: "The example was not opened",
      text: "It could not be fetched. Go on the network once, and it is kept on this device from then on.",
    });
  }
}

/** Name and date of a tray that begins now. */
function freshStart(): { readonly id: string; readonly issuedOn: string } {
  const now = new Date();
  return { id: `tray-${now.getTime().toString(36)}`, issuedOn: now.toISOString().slice(0, 10) };
}
