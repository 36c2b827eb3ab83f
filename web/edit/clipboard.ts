import { copiesOf, cuttingOf, gripsOfCopies, readCutting, writeCutting } from "../../core/project/index.ts";
import { hear } from "../hand/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { selectGrips } from "../tools/index.ts";
import { chosenWholes, doAll } from "./edit-deeds-of.ts";
import { useEdit } from "./edit-store.ts";

/** What was copied here last, and whether the clipboard took it: a browser may let the page neither write nor read. */
let copiedHere = "";
let isOnClipboard = false;
/** How often it has been pasted since, so that each copy is set down beside the last. */
let pastedTimes = 0;

/** How far each pasted copy is set beside what it is a copy of, mm. */
const BESIDE_MM = 20;

/** Copies what is chosen as text, for this tray or another. */
export async function copyChosen(): Promise<void> {
  const { project } = useDocument.getState();
  copiedHere = writeCutting(cuttingOf(project, chosenWholes()));
  pastedTimes = 0;
  isOnClipboard = await writeClipboard(copiedHere);
}

/** Copies what is chosen, and takes it away. */
export async function cutChosen(): Promise<void> {
  const copied = copyChosen();
  hear({ kind: "delete" });
  await copied;
}

/** Sets down what was copied, here or in another tray, as the clipboard gives it when it is asked. */
export async function pasteCopied(): Promise<void> {
  pasteText(isOnClipboard ? await readClipboard() : copiedHere);
}

/** Sets down what the browser hands over when its own key for pasting is pressed. */
export function pasteHanded(text: string): void {
  pasteText(isOnClipboard || copiedHere === "" ? text : copiedHere);
}

/** What is no part of a drawing is answered in words. */
function pasteText(text: string): void {
  const read = readCutting(text);
  const { tell } = useEdit.getState();
  if (!read.ok) {
    tell(read.message);
    return;
  }
  const { project } = useDocument.getState();
  if (text === copiedHere) pastedTimes++;
  const isHere = read.cutting.projectId === project.id && isAnyLeft(read.cutting.items);
  const besideMm = isHere ? BESIDE_MM * Math.max(1, pastedTimes) : 0;
  const byMm = { x: besideMm, y: besideMm, z: 0 };
  const copies = copiesOf(project, read.cutting, { kind: "move", byMm });
  const grips = gripsOfCopies(copies);
  if (grips.length > 0) {
    useView.getState().setTool("select");
    doAll([{ kind: "add-copies", copies }]);
    useView.getState().select(selectGrips(grips));
  }
  const missing = read.cutting.items.length - copies.items.length;
  tell(
    missing > 0
      ? `${missing} ${missing === 1 ? "transition was" : "transitions were"} left out: what ${missing === 1 ? "its" : "their"} edges run along is not in this tray. Copy that too.`
      : undefined,
  );
}

/** Whether what was copied still stands there, and a copy would hide it. */
const isAnyLeft = (items: readonly { readonly id: string }[]): boolean =>
  useDocument.getState().project.items.some(({ id }) => items.some((item) => item.id === id));

async function writeClipboard(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

async function readClipboard(): Promise<string> {
  try {
    return await navigator.clipboard.readText();
  } catch {
    return copiedHere;
  }
}
