import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createStore } from "zustand/vanilla";
import { copyBehind } from "../../../web/stores/a-moment-later.ts";

const FRAME_MS = 16;

describe("a copy that follows a moment later", () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal("requestAnimationFrame", (act: () => void) => setTimeout(act, FRAME_MS));
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  const pair = () => {
    let isDragged = false;
    const mayWait = () => isDragged;
    const drawing = createStore(() => ({ xMm: 0 }));
    const design = createStore(() => ({ lengthMm: 0 }));
    const drawingLate = copyBehind(drawing, { mayWait, isAnswer: () => false });
    const designLate = copyBehind(design, {
      mayWait,
      isAnswer: (now, before) => now.lengthMm !== before.lengthMm,
    });
    const drag = (next: boolean) => {
      isDragged = next;
    };
    return { drawing, design, drawingLate, designLate, drag };
  };

  it("sees at once what is typed", () => {
    const { drawing, drawingLate } = pair();
    drawing.setState({ xMm: 12 });
    expect(drawingLate.getState().xMm).toBe(12);
  });

  it("waits in a drag until what follows from the drawing has been painted, and then belongs to it", () => {
    const { drawing, design, drawingLate, designLate, drag } = pair();
    drag(true);
    drawing.setState({ xMm: 12 });
    expect(drawingLate.getState().xMm).toBe(0);
    design.setState({ lengthMm: 30 });
    expect([drawingLate.getState().xMm, designLate.getState().lengthMm]).toEqual([0, 0]);
    vi.advanceTimersByTime(2 * FRAME_MS);
    expect([drawingLate.getState().xMm, designLate.getState().lengthMm]).toEqual([12, 30]);
  });

  it("does not wait for an answer that never comes", () => {
    const { drawing, drawingLate, drag } = pair();
    drag(true);
    for (let xMm = 1; xMm <= 10; xMm += 1) {
      drawing.setState({ xMm });
      vi.advanceTimersByTime(FRAME_MS);
    }
    expect(drawingLate.getState().xMm).toBeGreaterThan(0);
  });

  it("is never left behind where the hand lets go", () => {
    const { drawing, design, drawingLate, designLate, drag } = pair();
    drag(true);
    drawing.setState({ xMm: 12 });
    design.setState({ lengthMm: 30 });
    drag(false);
    drawing.setState({ xMm: 13 });
    expect([drawingLate.getState().xMm, designLate.getState().lengthMm]).toEqual([13, 30]);
  });
});
