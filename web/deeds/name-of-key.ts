type Pressed = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "shiftKey" | "altKey"> &
  Partial<Pick<KeyboardEvent, "getModifierState">>;

/**
 * A key as the lists write it: `Ctrl+Shift+Z`. Cmd counts as Ctrl; Shift is not named where it makes a sign, nor
 * are the keys that some keyboards need to reach one.
 */
export function nameOfKey(event: Pressed): string {
  const isLetter = /^[a-z]$/i.test(event.key);
  const isThirdLevel = event.getModifierState?.("AltGraph") === true;
  const names = [
    !isThirdLevel && (event.ctrlKey || event.metaKey) ? "Ctrl" : "",
    !isThirdLevel && event.altKey ? "Alt" : "",
    event.shiftKey && (isLetter || event.key.length > 1) ? "Shift" : "",
    isLetter ? event.key.toUpperCase() : event.key,
  ];
  return names.filter((name) => name !== "").join("+");
}
