import { type DragEvent, useEffect, useRef } from "react";
import type { DrawingView } from "../tools/index.ts";
import { layPicture, type ViewBox } from "./lay-picture.ts";

/** What a board tells of itself, so that a picture comes to lie where it was dropped. */
export interface BoardOfPictures {
  readonly viewAt: (clientX: number, clientY: number) => DrawingView | undefined;
  readonly boxOf: (view: DrawingView) => ViewBox;
}

const KINDS = ["image/png", "image/jpeg", "image/svg+xml"];

/**
 * Pictures come onto the board by being dropped on it, pasted into the view that is pointed at, or chosen; gives what
 * the board listens with.
 */
export function usePictureEntry(board: BoardOfPictures) {
  const now = useRef(board);
  now.current = board;
  const lay = (file: File, view: DrawingView) => void layPicture(file, view, now.current.boxOf(view));
  useEffect(() => {
    let pointedView: DrawingView | undefined;
    const onMove = ({ clientX, clientY }: PointerEvent) => {
      pointedView = now.current.viewAt(clientX, clientY);
    };
    const onPaste = (event: ClipboardEvent) => {
      const file = [...(event.clipboardData?.files ?? [])].find(isPicture);
      if (!file || isField(event.target)) return;
      event.preventDefault();
      const view = pointedView ?? "plan";
      void layPicture(file, view, now.current.boxOf(view));
    };
    window.addEventListener("pointermove", onMove);
    window.addEventListener("paste", onPaste);
    return () => {
      window.removeEventListener("pointermove", onMove);
      window.removeEventListener("paste", onPaste);
    };
  }, []);
  return {
    onDrop: (event: DragEvent) => {
      const file = [...event.dataTransfer.files].find(isPicture);
      if (!file) return;
      event.preventDefault();
      event.stopPropagation();
      lay(file, now.current.viewAt(event.clientX, event.clientY) ?? "plan");
    },
  };
}

/** Lets the builder choose a picture file for a view. */
export function choosePicture(view: DrawingView, boxOf: (view: DrawingView) => ViewBox): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = `.png,.jpg,.jpeg,.svg,${KINDS.join(",")}`;
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void layPicture(file, view, boxOf(view));
  });
  input.click();
}

const isPicture = (file: File): boolean => KINDS.includes(file.type) || /\.(png|jpe?g|svg)$/i.test(file.name);

const isField = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest("input, textarea, [contenteditable]") !== null;
