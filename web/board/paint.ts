import { useSyncExternalStore } from "react";

/** The colours and types of the canvas: the tokens of the page, as they are now. */
export interface Paint {
  readonly paper: string;
  readonly sheet: string;
  readonly rule: string;
  readonly grid: string;
  readonly ink: string;
  readonly pencil: string;
  readonly mark: string;
  readonly onMark: string;
  readonly warn: string;
  readonly stop: string;
  readonly tints: readonly string[];
  readonly sans: string;
  readonly mono: string;
}

/** The paint of the page; a component that uses it is drawn again when light or dark is chosen. */
export const usePaint = (): Paint => useSyncExternalStore(watch, current);

let read: Paint | undefined;

function current(): Paint {
  read ??= readTokens();
  return read;
}

function watch(changed: () => void): () => void {
  const forget = () => {
    read = undefined;
    changed();
  };
  const observer = new MutationObserver(forget);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ["data-light", "class"] });
  document.fonts.addEventListener("loadingdone", forget);
  return () => {
    observer.disconnect();
    document.fonts.removeEventListener("loadingdone", forget);
  };
}

function readTokens(): Paint {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: token("paper"),
    sheet: token("sheet"),
    rule: token("rule"),
    grid: token("grid"),
    ink: token("ink"),
    pencil: token("pencil"),
    mark: token("mark"),
    onMark: token("on-mark"),
    warn: token("warn"),
    stop: token("stop"),
    tints: [1, 2, 3, 4, 5, 6].map((number) => token(`tint-${number}`)),
    sans: token("sans"),
    mono: token("mono"),
  };
}
