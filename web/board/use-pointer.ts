import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { distance2, roundTo, type Vec2 } from "../../core/foundation/index.ts";
import { contextNow } from "../hand/index.ts";
import { useHold } from "../place-menu/index.ts";
import { type Selection, usePointed, useView } from "../stores/index.ts";
import { type DrawingView, ownerKey, type Place, type ToolEvent, targetAt } from "../tools/index.ts";
import { placeAt, type Sheet, viewAt } from "./place-at.ts";
import { type PointerMove, useOnceAFrame } from "./use-once-a-frame.ts";
import { contains, panBy, planTransform, toMm, zoomAbout } from "./viewport.ts";

/** What the pointers on the board are doing. */
type Doing =
  | { readonly kind: "nothing" }
  | { readonly kind: "tool"; readonly view: DrawingView }
  | { readonly kind: "pan"; readonly view: DrawingView; readonly lastPx: Vec2 }
  | { readonly kind: "pinch"; readonly view: DrawingView }
  | { readonly kind: "hairline" };

interface Press {
  readonly px: Vec2;
  readonly atMs: number;
}

const DOUBLE_MS = 350;
const DOUBLE_PX = 8;

/**
 * Pointers of the board: they draw with the tool in hand, drag the hairline on the ruler, pull the paper (middle
 * button, space held, or bare paper), and pinch it with two fingers.
 */
export function usePointer(
  board: RefObject<HTMLElement | null>,
  sheetNow: () => Sheet,
  hear: (event: ToolEvent) => void,
) {
  const doing = useRef<Doing>({ kind: "nothing" });
  const fingers = useRef(new Map<number, Vec2>());
  const lastPress = useRef<Press>(undefined);
  const chosenBefore = useRef<Selection>(undefined);
  const isSpaceHeld = useSpaceKey();
  useWheel(board, sheetNow);

  const pxOf = (event: { readonly clientX: number; readonly clientY: number }): Vec2 => {
    const box = board.current?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  };
  const placeOf = (event: PointerEvent | PointerMove, view: DrawingView) =>
    placeAt(sheetNow(), view, pxOf(event), {
      isFinger: event.pointerType === "touch",
      snaps: !event.altKey,
      adds: choosesSeveral(event),
    });

  const begin = (event: PointerEvent): Doing => {
    const px = pxOf(event);
    const sheet = sheetNow();
    if (contains(sheet.layout.ruler, px)) return { kind: "hairline" };
    const view = viewAt(sheet, px);
    if (!view) return { kind: "nothing" };
    if (event.button === 1 || isSpaceHeld.current) return { kind: "pan", view, lastPx: px };
    if (event.button !== 0) return { kind: "nothing" };
    const place = placeOf(event, view);
    const isBare =
      useView.getState().tool === "select" && !place.adds && !targetAt(place, contextNow().scene, undefined);
    hear({ kind: "press", place });
    return isBare ? { kind: "pan", view, lastPx: px } : { kind: "tool", view };
  };

  const follow = (move: PointerMove) => {
    const px = pxOf(move);
    const before = fingers.current.get(move.pointerId);
    if (before) fingers.current.set(move.pointerId, px);
    const now = doing.current;
    const sheet = sheetNow();
    if (now.kind === "pinch" && before)
      return pinch(sheet, now.view, fingers.current, move.pointerId, before);
    if (now.kind === "hairline") return moveHairline(sheet, px);
    if (now.kind === "pan") {
      doing.current = { ...now, lastPx: px };
      return pull(sheet, now.view, [px[0] - now.lastPx[0], px[1] - now.lastPx[1]]);
    }
    const view = now.kind === "tool" ? now.view : viewAt(sheet, px);
    if (now.kind === "nothing") showCursor(move.board, view && placeOf(move, view));
    if (view) hear({ kind: "move", place: placeOf(move, view) });
  };
  const moves = useOnceAFrame(follow);

  /** Chooses what lies at a place whose menu is asked for; answers whether the place is on the drawing. */
  const choose = (event: { readonly clientX: number; readonly clientY: number }): boolean => {
    const now = doing.current;
    if (now.kind === "pinch" || now.kind === "hairline") return false;
    moves.settle();
    const view = viewAt(sheetNow(), pxOf(event));
    doing.current = { kind: "nothing" };
    if (!view) return false;
    const { tool, selection } = useView.getState();
    const hand = { isFinger: now.kind !== "nothing", snaps: true, adds: false };
    const place = placeAt(sheetNow(), view, pxOf(event), hand);
    if (now.kind === "tool") hear({ kind: "release", place });
    else if (tool === "select" && selection?.kind !== "several") {
      hear({ kind: "press", place });
      hear({ kind: "release", place });
    }
    return true;
  };
  const hold = useHold(choose);

  return {
    onContextMenu: hold.onContextMenu,
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      hold.onPointerDown(event);
      moves.settle();
      event.currentTarget.setPointerCapture(event.pointerId);
      if (event.pointerType === "touch") fingers.current.set(event.pointerId, pxOf(event));
      if (fingers.current.size === 2) {
        if (doing.current.kind === "tool") hear({ kind: "cancel" });
        // The first finger of a pinch chooses nothing.
        useView.getState().select(chosenBefore.current);
        doing.current = { kind: "pinch", view: viewAt(sheetNow(), pxOf(event)) ?? "plan" };
        return;
      }
      chosenBefore.current = useView.getState().selection;
      doing.current = begin(event);
      if (doing.current.kind === "hairline") moveHairline(sheetNow(), pxOf(event));
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      hold.onPointerMove(event);
      const { pointerId, pointerType, clientX, clientY, altKey, shiftKey, currentTarget: board } = event;
      moves.later({ pointerId, pointerType, clientX, clientY, altKey, shiftKey, board });
    },
    onPointerUp: (event: PointerEvent<HTMLElement>) => {
      hold.onPointerUp();
      moves.settle();
      fingers.current.delete(event.pointerId);
      const now = doing.current;
      if (now.kind === "pinch" && fingers.current.size > 0) return;
      doing.current = { kind: "nothing" };
      if (now.kind !== "tool") return;
      const place = placeOf(event, now.view);
      hear({ kind: "release", place });
      const press = { px: pxOf(event), atMs: event.timeStamp };
      const before = lastPress.current;
      const isDouble =
        before !== undefined &&
        press.atMs - before.atMs < DOUBLE_MS &&
        distance2(before.px, press.px) < DOUBLE_PX;
      lastPress.current = isDouble ? undefined : press;
      if (isDouble) hear({ kind: "double", place });
    },
    onPointerCancel: (event: PointerEvent<HTMLElement>) => {
      hold.onPointerCancel();
      moves.settle();
      fingers.current.delete(event.pointerId);
      if (doing.current.kind === "tool") hear({ kind: "cancel" });
      doing.current = { kind: "nothing" };
    },
  };
}

/** Shift is held with the Choose tool, or its switch for several is on. */
function choosesSeveral({ shiftKey }: { readonly shiftKey: boolean }): boolean {
  const { tool, choosing } = useView.getState();
  return tool === "select" && (shiftKey || choosing === "several");
}

/** The cursor says what a press would take hold of. */
function showCursor(element: HTMLElement, place: Place | undefined): void {
  const { scene, selection } = contextNow();
  const isSelecting = useView.getState().tool === "select";
  const target = place && isSelecting ? targetAt(place, scene, selection) : undefined;
  usePointed.getState().point(target && target.on !== "inside" ? ownerKey(target.line) : undefined);
  const cursor = target?.on === "node" ? "move" : target ? "pointer" : "";
  if (element.style.cursor !== cursor) element.style.cursor = cursor;
}

function moveHairline(sheet: Sheet, px: Vec2): void {
  const [x] = toMm(planTransform(sheet.viewport, sheet.layout), px);
  useView.getState().setHairline(roundTo(x, sheet.viewport.pixelsPerMm > 2 ? 1 : 0));
}

function pull(sheet: Sheet, view: DrawingView, byPx: Vec2): void {
  useView.getState().setViewport(panBy(sheet.viewport, view, byPx, sheet.heightFactor));
}

/** Two fingers: the paper goes with their middle and grows with their distance. */
function pinch(
  sheet: Sheet,
  view: DrawingView,
  fingers: ReadonlyMap<number, Vec2>,
  movedId: number,
  before: Vec2,
): void {
  const moved = fingers.get(movedId);
  const other = [...fingers].find(([id]) => id !== movedId)?.[1];
  if (!moved || !other) return;
  const middle: Vec2 = [(moved[0] + other[0]) / 2, (moved[1] + other[1]) / 2];
  const factor = distance2(moved, other) / Math.max(1, distance2(before, other));
  const { heightFactor, layout } = sheet;
  const zoomed = zoomAbout(sheet.viewport, layout, middle, { factor, heightFactor });
  const byPx: Vec2 = [(moved[0] - before[0]) / 2, (moved[1] - before[1]) / 2];
  useView.getState().setViewport(panBy(zoomed, view, byPx, heightFactor));
}

/** The wheel zooms at the pointer; two fingers on a pad pull the paper. */
function useWheel(board: RefObject<HTMLElement | null>, sheetNow: () => Sheet): void {
  const now = useRef(sheetNow);
  now.current = sheetNow;
  useEffect(() => {
    const element = board.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const px: Vec2 = [event.clientX - box.left, event.clientY - box.top];
      const sheet = now.current();
      if (isPull(event)) return pull(sheet, viewAt(sheet, px) ?? "plan", [-event.deltaX, -event.deltaY]);
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015));
      const { heightFactor, layout, viewport } = sheet;
      useView.getState().setViewport(zoomAbout(viewport, layout, px, { factor, heightFactor }));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [board]);
}

/** A pad gives small steps, or steps aside; a wheel gives large ones straight up or down. */
const isPull = (event: WheelEvent): boolean =>
  !event.ctrlKey && (event.deltaX !== 0 || (event.deltaMode === 0 && Math.abs(event.deltaY) < 40));

function useSpaceKey(): RefObject<boolean> {
  const isHeld = useRef(false);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.code === "Space") isHeld.current = event.type === "keydown";
    };
    window.addEventListener("keydown", onKey);
    window.addEventListener("keyup", onKey);
    return () => {
      window.removeEventListener("keydown", onKey);
      window.removeEventListener("keyup", onKey);
    };
  }, []);
  return isHeld;
}
