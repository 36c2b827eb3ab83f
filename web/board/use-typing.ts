import { type RefObject, useEffect } from "react";

const DIGIT = /^[0-9.,−-]$/;

/** A digit pressed anywhere outside of fields and dialogs begins the first number of the strip. */
export function useTyping(first: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (!DIGIT.test(event.key) || !first.current || isInField(event.target)) return;
      begin(first.current, event.key);
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [first]);
}

function begin(field: HTMLInputElement, letter: string): void {
  field.focus();
  const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
  setValue?.call(field, letter);
  field.dispatchEvent(new Event("input", { bubbles: true }));
}

const isInField = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest("input, select, textarea, dialog, [contenteditable]") !== null;
