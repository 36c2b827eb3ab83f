import { useEffect, useRef } from "react";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { ToolEvent } from "../tools/index.ts";

/** What keys can ask of the board besides what the tool in hand hears. */
export interface KeyTargets {
  readonly hear: (event: ToolEvent) => void;
  readonly fit: () => void;
  readonly zoom: (factor: number) => void;
  /** Begins typing numbers with this letter; answers whether there is something to type into. */
  readonly type: (letter: string) => boolean;
  /** Goes to the numbers of what is chosen; answers whether there are any. */
  readonly edit: () => boolean;
}

const ARROWS: Readonly<Record<string, Vec2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Keys of the board, wherever the focus is outside of fields, lists and dialogs. */
export function useKeys(targets: KeyTargets): void {
  const now = useRef(targets);
  now.current = targets;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (isElsewhere(event)) return;
      if (pressed(event, now.current)) event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, []);
}

function pressed(event: KeyboardEvent, { hear, fit, zoom, type, edit }: KeyTargets): boolean {
  const arrow = ARROWS[event.key];
  if (arrow) return did(() => hear({ kind: "nudge", byMm: scaled(arrow, event.shiftKey ? 10 : 1) }));
  switch (event.key.length === 1 ? event.key.toLowerCase() : event.key) {
    case "Escape":
      return did(() => hear({ kind: "cancel" }));
    case "Enter":
      return edit() || did(() => hear({ kind: "finish" }));
    case "Delete":
    case "Backspace":
      return did(() => hear({ kind: "delete" }));
    case "n":
      return did(() => hear({ kind: "next-node", by: 1 }));
    case "p":
      return did(() => hear({ kind: "next-node", by: -1 }));
    case "c":
      return did(() => hear({ kind: "bend" }));
    case "i":
      return did(() => hear({ kind: "insert" }));
    case "f":
      return did(fit);
    case "+":
    case "=":
      return did(() => zoom(1.25));
    case "-":
      return type("-") || did(() => zoom(0.8));
    default:
      return /^[0-9.,−]$/.test(event.key) && type(event.key);
  }
}

function did(act: () => void): true {
  act();
  return true;
}

const scaled = (by: Vec2, factor: number): Vec2 => [by[0] * factor, by[1] * factor];

function isElsewhere(event: KeyboardEvent): boolean {
  const target = event.target;
  if (!(target instanceof Element)) return false;
  if (target.closest("input, select, textarea, dialog, [contenteditable]")) return true;
  if (ARROWS[event.key] && target.closest("[role=separator], [role=slider], [role=toolbar]")) return true;
  return (event.key === "Enter" || event.key === " ") && target.closest("button, a, summary") !== null;
}
