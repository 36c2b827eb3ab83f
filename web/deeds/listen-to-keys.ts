import { useFiles } from "../files/index.ts";
import { useView } from "../stores/index.ts";
import { allDeeds } from "./all-deeds.ts";
import type { Deed } from "./deed.ts";
import { nameOfKey } from "./name-of-key.ts";
import { trayDeeds } from "./tray-deeds.ts";
import { isPossibleNow } from "./use-possible.ts";

/**
 * Does the deed whose key is pressed, the first of them that is possible. Keys typed into a field stay there but
 * for those that are heard everywhere; and while something half typed stands in it, undo and redo are its own.
 */
export function listenToKeys(): void {
  window.addEventListener("keydown", (event) => {
    if (event.defaultPrevented || isChangingWords(event) || isCopyingWords(event)) return;
    const key = nameOfKey(event);
    const deed = allDeeds.find((one) => one.keys.includes(key) && isHeard(one, event) && isPossibleNow(one));
    if (deed === undefined || deed.takesPaste) return;
    event.preventDefault();
    deed.run();
  });
  window.addEventListener("paste", (event) => {
    const { clipboardData } = event;
    // A file is a picture for the board, which listens itself.
    if (event.defaultPrevented || clipboardData === null || clipboardData.files.length > 0) return;
    const deed = allDeeds.find((one) => one.takesPaste && isHeard(one, event) && isPossibleNow(one));
    if (deed === undefined) return;
    event.preventDefault();
    deed.takesPaste?.(clipboardData.getData("text/plain"));
  });
}

/** On the start page nothing is shown that a key could be about, save what opens a file. */
function isHeard(deed: Deed, event: Event): boolean {
  if (useFiles.getState().place === "start") return deed === trayDeeds.open;
  if (deed.heard === "everywhere") return true;
  if (isElsewhere(event)) return false;
  return deed.heard === "page" || useView.getState().stage === "draw";
}

const ARROW = /^Arrow/;

/** The key belongs to a field, a dialog, or something else that takes it for itself. */
function isElsewhere(event: Event): boolean {
  const { target } = event;
  if (!(target instanceof Element)) return false;
  if (target.closest("input, select, textarea, dialog, [popover], [contenteditable]")) return true;
  if (!(event instanceof KeyboardEvent)) return false;
  if (event.key === "Escape" && document.querySelector(":popover-open") !== null) return true;
  if (ARROW.test(event.key) && target.closest("[role=separator], [role=slider], [role=toolbar]")) return true;
  return (event.key === "Enter" || event.key === " ") && target.closest("button, a, summary") !== null;
}

const isChangingWords = (event: KeyboardEvent): boolean =>
  event.target instanceof HTMLElement && event.target.matches("[data-draft]") && /^[zy]$/i.test(event.key);

/** Words that are marked on the page are what is copied. */
const isCopyingWords = (event: KeyboardEvent): boolean =>
  (event.ctrlKey || event.metaKey) && /^[cx]$/i.test(event.key) && (getSelection()?.toString() ?? "") !== "";
