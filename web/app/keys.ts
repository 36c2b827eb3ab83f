import { type Action, actions } from "./actions.ts";

/**
 * Runs the action whose key is pressed. Keys typed into a field stay there, save those with Ctrl; and while
 * something half typed stands in it, undo and redo are the field's own too.
 */
export function listenToKeys(): void {
  window.addEventListener("keydown", (event) => {
    if (event.defaultPrevented) return;
    const action = actionOf(nameOfKey(event));
    if (action === undefined) return;
    if (isTyping(event.target) && !(event.ctrlKey || event.metaKey)) return;
    if (isChangingWords(event)) return;
    event.preventDefault();
    action.run();
  });
}

function actionOf(key: string): Action | undefined {
  const all: readonly Action[] = Object.values(actions);
  return all.find((action) => action.keys.includes(key));
}

/** A key as the lists write it: `Ctrl+Shift+Z`; Cmd counts as Ctrl, and Shift is not named where it makes a sign. */
export function nameOfKey(
  event: Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "shiftKey" | "altKey">,
): string {
  const isLetter = /^[a-z]$/i.test(event.key);
  const names = [
    event.ctrlKey || event.metaKey ? "Ctrl" : "",
    event.altKey ? "Alt" : "",
    event.shiftKey && (isLetter || event.key.length > 1) ? "Shift" : "",
    isLetter ? event.key.toUpperCase() : event.key,
  ];
  return names.filter((name) => name !== "").join("+");
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.matches("input:not([type=checkbox], [type=radio]), textarea, select, [contenteditable]");
}

const isChangingWords = (event: KeyboardEvent): boolean =>
  event.target instanceof HTMLElement && event.target.matches("[data-draft]") && /^[zy]$/i.test(event.key);
